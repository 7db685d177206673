using System.CommandLine.Parsing;

namespace PulseStream.Cli.Options;

/// <summary>Keeps a mistyped option from being taken for a path.</summary>
internal static class PathArguments
{
    public static void RefuseUnknownOptions(ArgumentResult paths)
    {
        foreach (var token in paths.Tokens)
        {
            if (token.Value is ['-', _, ..] && !Path.Exists(token.Value))
            {
                paths.AddError($"{token.Value}: there is no such option");
                return;
            }
        }
    }
}
