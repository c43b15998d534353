using EolSequencer.Cli.Commands;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Records;
using EolSequencer.Records.Administration;
using EolSequencer.Records.People;
using EolSequencer.Station.Log;
using Spectre.Console;

namespace EolSequencer.Cli.Administering;

/// <summary>One act from the command line: opens the record, signs the person in, lets them act, tells what came of it.</summary>
/// <param name="console">Where the result goes.</param>
internal sealed class ActSession(IAnsiConsole console, ActChoices choices)
{
    private readonly IAnsiConsole _told = choices.AsJson ? ErrorConsole.Make() : console;

    /// <summary>Lets a person act.</summary>
    /// <param name="act">What they do.</param>
    /// <param name="tell">Says what was done: for people, and as an object for JSON.</param>
    public int Run<T>(Func<RecordAdministration, SignedIn, Outcome<T>> act, Func<T, (string Line, object Json)> tell)
        where T : class => Act((administration, by, _) => act(administration, by), tell, wantsSecond: false);

    /// <summary>Lets two persons act together.</summary>
    public int RunTogether<T>(Func<RecordAdministration, SignedIn, SignedIn, Outcome<T>> act, Func<T, (string Line, object Json)> tell)
        where T : class => Act(act, tell, wantsSecond: true);

    private int Act<T>(Func<RecordAdministration, SignedIn, SignedIn, Outcome<T>> act, Func<T, (string Line, object Json)> tell, bool wantsSecond)
        where T : class => Guard(() =>
    {
        var opened = DataFolder.Open(choices.Data, TimeProvider.System);
        if (opened is not FolderResult<DataFolder>.Opened { Folder: var folder }) return Refusals.Folder(_told, opened);
        var log = new AdministrationLog(folder.Path, TimeProvider.System);
        var code = Run(folder, folder.Administer(log.Note), act, tell, wantsSecond);
        if (log.Trouble is { } trouble) _told.MarkupLineInterpolated($"[yellow]the log is not kept[/]: {trouble}");
        return code;
    });

    /// <summary>Looks at the record without acting; nobody has to sign in, and nothing is made.</summary>
    public int Look(Func<RecordFolder, int> look) => Guard(() =>
    {
        var opened = RecordFolder.Open(choices.Data);
        return opened is FolderResult<RecordFolder>.Opened { Folder: var record } ? look(record) : Refusals.Folder(_told, opened);
    });

    private int Run<T>(DataFolder folder, RecordAdministration administration, Func<RecordAdministration, SignedIn, SignedIn, Outcome<T>> act, Func<T, (string Line, object Json)> tell, bool wantsSecond)
        where T : class
    {
        if (new FirstAdministrator(_told, folder, administration).Make() is { } nobody) return Tell(nobody);
        if (SignIn(administration, choices.By, "--by", Secrets.Own, out var code) is not { } by) return code;
        SignedIn? second = null;
        if (wantsSecond)
        {
            second = SignIn(administration, choices.Second, "--second", Secrets.Second, out code);
            if (second is null) return code;
        }

        var outcome = act(administration, by, second!);
        if (!outcome.IsDone) return Tell(outcome.Refused);
        var (line, json) = tell(outcome.Value);
        if (choices.AsJson) JsonOutput.Write(console, json);
        else console.MarkupLineInterpolated($"{line}");
        return ExitCode.Pass;
    }

    /// <summary>Signs a person in; null: told why not.</summary>
    private SignedIn? SignIn(RecordAdministration administration, string? badge, string option, string variable, out int code)
    {
        code = ExitCode.Document;
        if (badge is null)
        {
            Refusals.Document(_told, $"who acts? write {option} BADGE");
            return null;
        }

        if (new Secrets(_told).Ask(variable, badge) is not { } secret) return null;
        var signedIn = administration.SignIn.With(badge, secret);
        if (!signedIn.IsDone) code = Tell(signedIn.Refused);
        return signedIn.Value;
    }

    /// <summary>Tells a refusal; what nobody may or a rule forbids ends otherwise than what is mistyped.</summary>
    private int Tell(Refused refused)
    {
        Refusals.Document(_told, refused.Why);
        return refused.Reason is Refusal.NotAllowed or Refusal.AgainstRule ? ExitCode.Fail : ExitCode.Document;
    }

    private int Guard(Func<int> use)
    {
        try
        {
            return use();
        }
        catch (RecordFault fault)
        {
            return Refusals.Equipment(_told, fault.Message);
        }
    }
}
