using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>What steps have when they do not say otherwise; an inner group changes single values.</summary>
/// <param name="Decision">A guarded decision that is only a default leaves steps without a stated uncertainty alone.</param>
internal sealed record StepDefaults(Operand? Within, StepClass Class, OnFail OnFail, Decision Decision, Operand? Every);
