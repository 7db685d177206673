using System.Text.Json.Serialization;

namespace PulseStream.Archive.Sealing;

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(SessionDocument))]
internal sealed partial class SessionJson : JsonSerializerContext;
