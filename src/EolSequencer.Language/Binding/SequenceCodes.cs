using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Binding;

/// <summary>What is wrong with a sequence or fragment.</summary>
public static class SequenceCodes
{
    public static readonly DiagnosticCode NoNode = Error("SEQ001",
        "An entry that is no step", "begin it with  step: NAME,  group: NAME  or  together:");

    public static readonly DiagnosticCode Empty = Error("SEQ002",
        "Nothing to do", "add a step, or leave it out");

    public static readonly DiagnosticCode TooDeep = Error("SEQ003",
        "Groups too deep in each other", "let groups stand beside each other; a fragment counts as a group");

    public static readonly DiagnosticCode OneBranch = Error("SEQ004",
        "Branches that are not at least two", "write two branches, or the steps without  together");

    public static readonly DiagnosticCode TooManyInstances = Error("SEQ005",
        "A group that would run too often", "split the group, or give the loop fewer values");

    public static readonly DiagnosticCode TooManySteps = Error("SEQ006",
        "A sequence that unrolls to too many steps", "split the sequence, or give its loops fewer values");

    public static readonly DiagnosticCode BadReference = Error("SEQ010",
        "Something that names nothing of a device", "write  DEVICE.NAME  or  DEVICE.NAME[index]");

    public static readonly DiagnosticCode UnknownRole = Error("SEQ011",
        "A device that the sequence does not have", "add it to  devices,  or correct the name");

    public static readonly DiagnosticCode UnknownChannel = Error("SEQ012",
        "A channel that the device does not have", "see the device kind, or the vehicle type, for its channels");

    public static readonly DiagnosticCode UnknownAction = Error("SEQ013",
        "An action that the device does not have", "see the device kind, or the vehicle type, for its actions");

    public static readonly DiagnosticCode UnknownIndex = Error("SEQ014",
        "An index that does not exist here", "write one of its indexes, a loop name or a parameter");

    public static readonly DiagnosticCode IndexMissing = Error("SEQ015",
        "An index is missing", "write it in square brackets");

    public static readonly DiagnosticCode NoIndex = Error("SEQ016",
        "An index where there is none", "leave the brackets out");

    public static readonly DiagnosticCode NoIndexName = Error("SEQ017",
        "A name that cannot be an index", "name a loop or a parameter with  one-of");

    public static readonly DiagnosticCode NotSet = Error("SEQ018",
        "An action that takes no value is set", "write  do  instead of  set");

    public static readonly DiagnosticCode NotDone = Error("SEQ019",
        "An action that takes a value is done", "write  set  and  to");

    public static readonly DiagnosticCode UnknownParameter = Error("SEQ020",
        "A value for something that is not asked for", "leave it out, or correct the name");

    public static readonly DiagnosticCode MissingParameter = Error("SEQ021",
        "A value that is needed is not given", "give it with  with");

    public static readonly DiagnosticCode NoDefault = Error("SEQ022",
        "A parameter of a sequence without a value", "add  default");

    public static readonly DiagnosticCode ParameterWindow = Error("SEQ023",
        "A window that a parameter cannot have", "write a window of written numbers for a number or a time");

    public static readonly DiagnosticCode OutsideWindow = Error("SEQ024",
        "A value outside the window of its parameter", "choose a value within the window");

    public static readonly DiagnosticCode WithWithoutUse = Error("SEQ025",
        "Values for a fragment without a fragment", "add  use,  or leave  with  out");

    public static readonly DiagnosticCode Recursion = Error("SEQ026",
        "A fragment that uses itself", "take one of the uses out");

    public static readonly DiagnosticCode RoleMissing = Error("SEQ027",
        "A device that a fragment needs and the sequence does not have", "add it to  devices  of the sequence");

    public static readonly DiagnosticCode CautionMissing = Error("SEQ030",
        "Something dangerous without a caution", "add  caution: …  or, on purpose,  caution: not-needed");

    public static readonly DiagnosticCode UnknownPlace = Error("SEQ031",
        "A place that the plant does not have", "add it to  places  of plant.yaml, or correct the name");

    public static readonly DiagnosticCode UnknownNameInText = Error("SEQ032",
        "A name in braces that means nothing here", "name a loop or a parameter, or leave the braces out");

    public static readonly DiagnosticCode BadPicture = Error("SEQ033",
        "Not the path of a picture", "name a .svg, .png, .jpg or .webp file by its path from the plant's folder");

    public static readonly DiagnosticCode NoPicture = Error("SEQ034",
        "A picture that does not exist", "add the file, or correct the path");

    public static readonly DiagnosticCode UnknownWords = Error("SEQ035",
        "Words for something that is never shown", "correct the name or value, or leave it out");

    public static readonly DiagnosticCode OtherPicture = Error("SEQ036",
        "A picture of another kind than its name says", "save it as what its ending says, or correct the ending");

    public static readonly DiagnosticCode UnknownNonconformity = Error("SEQ037",
        "A nonconformity that the plant's catalogue does not have", "add it to  nonconformities  of plant.yaml, or correct the code");

    public static readonly DiagnosticCode UnknownWhere = Error("SEQ038",
        "A place that the plant's catalogue does not have for a nonconformity", "add it to its  where  in plant.yaml, or correct it");

    public static readonly DiagnosticCode NothingToExpect = Error("SEQ040",
        "Something is expected of a step that finds no value", "leave  expect  out; time is judged with  takes");

    public static readonly DiagnosticCode GuardedWithout = Error("SEQ041",
        "A guarded decision without an uncertainty", "add  uncertainty,  or decide simply");

    public static readonly DiagnosticCode UncertaintyOfNoNumber = Error("SEQ042",
        "An uncertainty of something that is no judged number", "leave it out");

    public static readonly DiagnosticCode NeedsUntil = Error("SEQ043",
        "A key about a condition on a step without one", "add  until,  or leave the key out");

    public static readonly DiagnosticCode SinceWithoutTakes = Error("SEQ044",
        "A start of a time that nobody judges", "add  takes,  or leave  since  out");

    public static readonly DiagnosticCode SampledNoNumber = Error("SEQ045",
        "Something sampled that is no number", "read it, or await a condition on it");

    public static readonly DiagnosticCode BareNumber = Error("SEQ046",
        "A bare number without a unit", "add  unit: V  or another unit; for a count, expect a plain number");

    public static readonly DiagnosticCode SerialOfNoText = Error("SEQ047",
        "A serial that is not one text", "read, scan or enter one text; of an indexed channel, one index");

    public static readonly DiagnosticCode PartWithoutSerial = Error("SEQ048",
        "A part of which no serial is recorded", "add  record: serial,  or leave  part  out");

    public static readonly DiagnosticCode ConditionOfEvent = Error("SEQ049",
        "A condition whose channel gives results that arrive once", "name a channel that can be read at any time");

    public static readonly DiagnosticCode NotOnVehicle = Error("SEQ060",
        "A vehicle reaches a step without what the step uses", "keep the vehicle from the step with  when");

    public static readonly DiagnosticCode ResultNotOnVehicle = Error("SEQ061",
        "A vehicle reaches a step without the result that the step names", "ask for it with  .or(…),  or let both steps apply to the same vehicles");

    public static readonly DiagnosticCode TraceNotOnVehicle = Error("SEQ062",
        "A vehicle reaches a step without the trace that the step names", "let the group and the step apply to the same vehicles");

    public static readonly DiagnosticCode NotCaptured = Error("SEQ063",
        "A trace of an index that the group does not capture", "name the index that  capture  names, or capture the channel without one");

    public static readonly DiagnosticCode CaptureOfLanes = Error("SEQ064",
        "A capture of a group whose loop values run side by side", "put the group into another one, and let that have the capture");

    public static readonly DiagnosticCode SharedCapture = Error("SEQ065",
        "A capture from an exclusive device that others use meanwhile", "let one come after the other");

    public static readonly DiagnosticCode UnknownDependency = Error("SEQ066",
        "A group or step depends on what does not stand before it", "name a group or step before it, by its id without loop values");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);
}
