using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Expressions;

/// <summary>
/// Names compiled code by everything it depends on: the texts and their places, what each may name, this compiler, its
/// runtime and the contract it compiles against. Nothing here needs the C# compiler, so a warm start does not load it.
/// </summary>
internal sealed class ExpressionKey
{
    private const string Compiler = "Microsoft.CodeAnalysis.CSharp";

    private readonly Dictionary<Expression, int> _numbers = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<object, byte[]> _known = new(ReferenceEqualityComparer.Instance);

    private ExpressionKey(IReadOnlyList<ExpressionText> texts)
    {
        for (var number = 0; number < texts.Count; number++) _numbers[texts[number].Expression] = number;
    }

    /// <summary>64 lower-case hexadecimal digits.</summary>
    public static string Of(IReadOnlyList<ExpressionText> texts)
    {
        var key = new ExpressionKey(texts);
        return Convert.ToHexStringLower(Digest.Of(into =>
        {
            key.AddPrograms(into);
            foreach (var text in texts) key.Add(text, into);
            foreach (var walk in texts.Select(text => text.Names.Results?.History.Walk).OfType<List<ResultChange>>().Distinct())
            {
                foreach (var change in walk) into.Bytes(key.Once(change, key.Add));
            }
        }));
    }

    private void AddPrograms(Digest into)
    {
        var language = typeof(ExpressionKey).Assembly;
        into.Text(language.GetReferencedAssemblies().Single(one => one.Name == Compiler).FullName);
        into.Text(language.ManifestModule.ModuleVersionId.ToString());
        into.Text(typeof(Expression).Assembly.ManifestModule.ModuleVersionId.ToString());
        into.Text(Environment.Version.ToString());
    }

    private void Add(ExpressionText text, Digest into)
    {
        var place = text.Expression.Place;
        into.Text(text.Text);
        into.Text(place.File);
        into.Text(string.Create(CultureInfo.InvariantCulture, $"{place.Line} {place.Column} {place.EndLine} {place.EndColumn}"));
        Add((text.Wanted as Wanted.One)?.Shape, into);
        into.Bytes(Once(text.Names, Add));
    }

    private void Add(ExpressionNames names, Digest into)
    {
        into.Bytes(Once(names.Vehicle, Add));
        into.Bytes(Once(names.Roles, Add));
        into.Bytes(Once(names.Arguments, Add));
        into.Bytes(Once(names.Results?.History, Add));
        into.Flag(names.RunVerdict);
    }

    private void Add(VehicleType vehicle, Digest into)
    {
        foreach (var option in vehicle.Options)
        {
            into.Text(option.Name);
            Add(option.Shape, into);
        }

        foreach (var fact in vehicle.OrderFacts)
        {
            into.Text(fact.Name);
            Add(fact.Shape, into);
            into.Texts(fact.Indexes.Select(index => index.Value));
        }
    }

    private void Add(ImmutableSortedDictionary<string, DeviceKind> roles, Digest into)
    {
        foreach (var (role, kind) in roles)
        {
            into.Text(role);
            into.Bytes(Once(kind, Add));
        }
    }

    private void Add(DeviceKind kind, Digest into)
    {
        foreach (var channel in kind.Channels.Values)
        {
            into.Text(channel.Name);
            Add(channel.Shape, into);
            into.Texts(channel.Indexes.Select(index => index.Value));
        }
    }

    private void Add(ImmutableSortedDictionary<string, ValueShape> arguments, Digest into)
    {
        foreach (var (name, shape) in arguments)
        {
            into.Text(name);
            Add(shape, into);
        }
    }

    // Not recursive: a long sequence has a long history.
    private void Add(ResultHistory history, Digest into)
    {
        var unknown = new Stack<ResultHistory>();
        for (var at = history.Before; at is not null && !_known.ContainsKey(at); at = at.Before) unknown.Push(at);
        while (unknown.TryPop(out var earlier)) Once(earlier, AddNewest);
        AddNewest(history, into);
    }

    private void AddNewest(ResultHistory history, Digest into)
    {
        into.Bytes(history.Before is null ? [] : _known[history.Before]);
        into.Bytes(Once(history.Change, Add));
    }

    private void Add(ResultChange change, Digest into)
    {
        into.Text(change.GetType().Name);
        switch (change)
        {
            case ResultChange.Added added:
                into.Text(added.Step);
                AddShape(added.Node, into);
                into.Texts(added.Node.Indexes);
                into.Flag(added.Node.MayBeMissing);
                break;
            case ResultChange.Entered entered:
                into.Text(entered.Group);
                into.Flag(entered.IsFragment);
                foreach (var loop in entered.Loops) Add(loop, into);
                foreach (var captured in entered.Capture?.Channels ?? []) Add(captured, into);
                break;
            case ResultChange.Left left:
                into.Flag(left.MayBeMissing);
                break;
            case ResultChange.Joined joined:
                into.Bytes(Once(joined.Branch, Add));
                break;
        }
    }

    private void AddShape(ResultNode.Step step, Digest into)
    {
        if (step.Computed is { } computed && _numbers.TryGetValue(computed, out var number))
        {
            into.Text(number.ToString(CultureInfo.InvariantCulture));
        }
        else
        {
            Add(step.Computed?.Shape ?? step.Shape, into);
        }
    }

    private static void Add(CapturedChannel captured, Digest into)
    {
        into.Text(captured.Channel.Role);
        into.Text(captured.Channel.Channel);
        Add(captured.Description.Shape, into);
        into.Texts(captured.Description.Indexes.Select(index => index.Value));
    }

    private static void Add(LoopName loop, Digest into)
    {
        into.Text(loop.Name);
        into.Texts(loop.Values.Select(value => value.Value));
        into.Texts(loop.Values.Where(value => value.When is not null).Select(value => value.Value));
    }

    private static void Add(ValueShape? shape, Digest into)
    {
        into.Flag(shape is not null);
        if (shape is null) return;
        into.Text(shape.Kind.ToString());
        into.Text(shape.Unit?.Symbol ?? "");
        into.Texts(shape.Choices);
        into.Text(shape.MaxLength?.ToString(CultureInfo.InvariantCulture) ?? "");
    }

    /// <summary>The hash of a shared part, computed the first time it is met.</summary>
    private byte[] Once<T>(T? part, Action<T, Digest> add) where T : class
    {
        if (part is null) return [];
        if (!_known.TryGetValue(part, out var hash)) _known[part] = hash = Digest.Of(into => add(part, into));
        return hash;
    }
}
