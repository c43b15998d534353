using System.Collections.Immutable;
using System.Security.Cryptography;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions;

/// <summary>The compiled expressions of one load.</summary>
/// <param name="Code">A managed assembly.</param>
/// <param name="Symbols">Its portable debugging symbols, which lead to the authors' lines.</param>
/// <param name="Expressions">What was found out about each, in the order they were added.</param>
internal sealed record CompiledUnit(byte[] Code, byte[] Symbols, ImmutableArray<CompiledExpression> Expressions)
{
    /// <summary>SHA-256 of the code, 64 lower-case hexadecimal digits.</summary>
    public string Hash { get; } = Convert.ToHexStringLower(SHA256.HashData(Code));
}

/// <summary>What compiling found out about an expression.</summary>
/// <param name="Function">Which function of the unit it is; equal ones share theirs.</param>
/// <param name="IsInexact">True when its own code works in binary floating point.</param>
internal sealed record CompiledExpression(
    int Function, ValueShape Shape, ImmutableArray<ChannelUse> Channels, ImmutableArray<ResultUse> Results, ImmutableArray<TraceUse> Traces, bool IsInexact);
