using CsCheck;

namespace EolSequencer.Language.Tests.Fuzzing;

/// <summary>Texts that are put together as authors put them together, with parts that do not always fit.</summary>
internal static class Grammar
{
    private static readonly Gen<string> Number = Gen.Frequency(
        (8, Gen.Int[-2000, 2000].Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture))),
        (4, Gen.Decimal[-1000m, 1000m].Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture))),
        (2, Gen.OneOf("1e3", "0x1F", "007", "1,5", "−4", "1_000", ".5", "5.", "79228162514264337593543950336", "NaN", "1.5m", "2L")));

    private static readonly Gen<string> Unit = Gen.OneOf(
        "", "V", "A", "mV", "km/h", "N·m", "Nm", "°C", "ºC", "%", "% vol", "1/min", "rpm", "s", "ms", "bar", "dB(A)", "kΩ", "N m", "volt", "v", "K diff");

    private static readonly Gen<string> End = Gen.OneOf(Number, Gen.Const(""), Gen.OneOf("(travel)", "(turns * 2)", "(1", "()", "((turns))"));

    /// <summary>What may stand behind <c>expect</c>.</summary>
    public static Gen<string> Expectations { get; } = Gen.OneOf(
        Gen.Select(End, Gen.OneOf(" .. ", "..", " … ", " ± ", " +/- ", " - ", " to "), End, Unit).Select((low, mark, high, unit) => $"{low}{mark}{high} {unit}"),
        Gen.Select(Gen.OneOf("at least ", "at most ", "equals ", "atleast ", ""), End, Unit).Select((word, end, unit) => $"{word}{end} {unit}"),
        Gen.Select(Gen.OneOf("one of [", "only [", "one of ["), Number.Array[0, 4], Gen.OneOf("]", "", "]]")).Select((word, items, close) => $"{word}{string.Join(", ", items)}{close}"),
        Gen.OneOf("empty", "yes", "no", "limits.usual", "limits.usual[wheel]", "limits.", "matches /[A-Z]{3}/", "matches /(/", "matches /a{1,9999}/", "matches /(a+)+$/", "matches //"));

    private static readonly Gen<string> Leaf = Gen.Frequency(
        (6, Gen.OneOf(
            "bus.brake_switch", "bus.door_ajar[door]", "bus.door_ajar[\"rear\"]", "bus.engine_speed.rpm", "bus.vehicle_speed.km_h", "bus.gear", "bus.count", "bus.pressure.bar",
            "rollers.brake_force[wheel].N", "vehicle.drive", "vehicle.tow", "order.paint", "order.software[ecu]", "note", "turns", "travel.s", "bus.stored_codes", "bus.vehicle_speed")),
        (3, Number),
        (2, Gen.OneOf("\"awd\"", "\"\"", "true", "$\"{turns:0.0}\"", "\"x\\n\"", "'a'")),
        (1, Gen.OneOf(
            "bus.nothing", "File", "System.IO.File.ReadAllText(\"x\")", "note.Length", "typeof(int)", "this", "null", "default", "new object()", "bus.gear.GetType()", "s.Channel(0)",
            "System.Environment.Exit(1)", "x => x", "stackalloc int[3]", "global::System.Console.In", "note[0]", "unchecked(1)", "await note", "throw null", "nameof(note)", "sizeof(int)")));

    /// <summary>Expressions of C#.</summary>
    public static Gen<string> Expressions { get; } = Gen.Recursive<string>((depth, inner) => depth >= 4 ? Leaf : Gen.Frequency(
        (5, Leaf),
        (6, Gen.Select(inner, Gen.OneOf("+", "-", "*", "/", "%", "&&", "||", "==", "!=", "<", "<=", ">", ">=", "^", "&", "??", "is", "=", "<<"), inner).Select((left, sign, right) => $"{left} {sign} {right}")),
        (2, inner.Select(one => $"({one})")),
        (2, Gen.Select(Gen.OneOf("!", "-", "+", "~"), inner).Select((sign, one) => sign + one)),
        (2, Gen.Select(inner, inner, inner).Select((test, yes, no) => $"{test} ? {yes} : {no}")),
        (3, Gen.Select(Gen.OneOf("max", "min", "abs", "sqrt", "round", "pow", "imbalance", "edges", "log", "Max"), inner.Array[0, 3]).Select((name, all) => $"{name}({string.Join(", ", all)})")),
        (1, Gen.Select(inner, Gen.OneOf(".rpm", ".or(0)", ".took", ".verdict", "[0]", "[\"fl\"]", ".ToString()", ".max", "?.x", "++")).Select((one, more) => one + more))));

    /// <summary>Spellings of units.</summary>
    public static Gen<string> Units { get; } = Gen.OneOf(
        Gen.Select(Unit, Gen.OneOf("", "/", "·", "*", ".", " ", "²", "³", "^2", "-"), Unit).Select((one, sign, other) => one + sign + other),
        Gen.Char.Array[0, 6].Select(letters => new string(letters)),
        Gen.Char[' ', '~'].Array[0, 6].Select(letters => new string(letters)));
}
