using System.Text.Json.Serialization;

namespace PulseStream.Cli.Inputs;

[JsonSourceGenerationOptions(IgnoreReadOnlyProperties = true)]
[JsonSerializable(typeof(FinishedReplay))]
internal sealed partial class FinishedReplayJson : JsonSerializerContext;
