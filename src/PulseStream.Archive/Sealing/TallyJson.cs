using System.Text.Json.Serialization;

namespace PulseStream.Archive.Sealing;

[JsonSerializable(typeof(long[]))]
internal sealed partial class TallyJson : JsonSerializerContext;
