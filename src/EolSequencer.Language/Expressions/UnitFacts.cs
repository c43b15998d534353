using System.Collections.Immutable;
using System.Text;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions;

/// <summary>The stored form of what was found out about the expressions of a unit.</summary>
internal static class UnitFacts
{
    public static byte[] Write(ImmutableArray<CompiledExpression> expressions)
    {
        using var bytes = new MemoryStream();
        using (var into = new BinaryWriter(bytes, Encoding.UTF8))
        {
            WriteAll(into, expressions, Write);
        }

        return bytes.ToArray();
    }

    public static ImmutableArray<CompiledExpression> Read(byte[] bytes)
    {
        using var from = new BinaryReader(new MemoryStream(bytes, writable: false), Encoding.UTF8);
        return ReadAll(from, ReadExpression);
    }

    private static void Write(BinaryWriter into, CompiledExpression expression)
    {
        into.Write(expression.Function);
        Write(into, expression.Shape);
        WriteAll(into, expression.Channels, Write);
        WriteAll(into, expression.Results, Write);
        WriteAll(into, expression.Traces, Write);
        into.Write(expression.IsInexact);
    }

    private static CompiledExpression ReadExpression(BinaryReader from) =>
        new(from.ReadInt32(), ReadShape(from), ReadAll(from, ReadChannel), ReadAll(from, ReadResult), ReadAll(from, ReadTrace), from.ReadBoolean());

    private static void Write(BinaryWriter into, ValueShape shape)
    {
        into.Write((int)shape.Kind);
        into.Write(shape.Unit?.Symbol ?? "");
        WriteAll(into, shape.Choices, (writer, choice) => writer.Write(choice));
        into.Write(shape.MaxLength ?? -1);
    }

    private static ValueShape ReadShape(BinaryReader from)
    {
        var kind = (ValueKind)from.ReadInt32();
        var symbol = from.ReadString();
        var choices = ReadAll(from, reader => reader.ReadString());
        var length = from.ReadInt32();
        return new ValueShape(kind, symbol.Length == 0 ? null : UnitTable.Required(symbol), choices, length < 0 ? null : length);
    }

    private static void Write(BinaryWriter into, ChannelUse use)
    {
        into.Write(use.Role);
        into.Write(use.Channel);
        WriteAll<IndexUse>(into, use.Index is null ? [] : [use.Index], Write);
    }

    private static ChannelUse ReadChannel(BinaryReader from) =>
        new(from.ReadString(), from.ReadString(), ReadAll(from, ReadIndex).FirstOrDefault());

    private static void Write(BinaryWriter into, ResultUse use)
    {
        into.Write(use.Levels);
        into.Write(use.Optional);
        WriteAll(into, use.Path, Write);
    }

    private static ResultUse ReadResult(BinaryReader from)
    {
        var levels = from.ReadInt32();
        var optional = from.ReadBoolean();
        return new ResultUse(levels, ReadAll(from, ReadPart), optional);
    }

    private static void Write(BinaryWriter into, TraceUse use)
    {
        Write(into, use.Group);
        Write(into, use.Channel);
    }

    private static TraceUse ReadTrace(BinaryReader from) => new(ReadResult(from), ReadChannel(from));

    private static void Write(BinaryWriter into, ResultUse.Part part)
    {
        into.Write(part.Name);
        WriteAll(into, part.Indexes, Write);
    }

    private static ResultUse.Part ReadPart(BinaryReader from) => new(from.ReadString(), ReadAll(from, ReadIndex));

    private static void Write(BinaryWriter into, IndexUse index)
    {
        into.Write(index is IndexUse.Named);
        into.Write(index is IndexUse.Named named ? named.Name : ((IndexUse.Fixed)index).Value);
    }

    private static IndexUse ReadIndex(BinaryReader from) =>
        from.ReadBoolean() ? new IndexUse.Named(from.ReadString()) : new IndexUse.Fixed(from.ReadString());

    private static void WriteAll<T>(BinaryWriter into, ImmutableArray<T> items, Action<BinaryWriter, T> write)
    {
        into.Write(items.Length);
        foreach (var item in items) write(into, item);
    }

    private static ImmutableArray<T> ReadAll<T>(BinaryReader from, Func<BinaryReader, T> read)
    {
        var items = ImmutableArray.CreateBuilder<T>(from.ReadInt32());
        for (var left = items.Capacity; left > 0; left--) items.Add(read(from));
        return items.MoveToImmutable();
    }
}
