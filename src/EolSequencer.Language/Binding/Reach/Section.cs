namespace EolSequencer.Language.Binding.Reach;

/// <summary>The part of a sequence a node stands in, in the order in which the parts run.</summary>
internal enum Section
{
    Prepare,
    Steps,
    Always,
    AfterVerdict,
}
