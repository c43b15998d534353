namespace EolSequencer.Cli.Replaying;

/// <summary>Which of many runs are judged again.</summary>
internal sealed record WhatIfChoices(string From, string To, string? Station, bool Rehearsals);
