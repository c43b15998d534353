using System.Reflection;
using System.Runtime.Loader;
using EolSequencer.Language.Expressions.Support;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions;

/// <summary>Where compiled expressions live. They meet the model and the support that this compiler itself uses.</summary>
internal sealed class UnitContext() : AssemblyLoadContext("expressions", isCollectible: true)
{
    private static readonly Assembly[] Shared = [typeof(Value).Assembly, typeof(ExpressionUnit).Assembly];

    protected override Assembly? Load(AssemblyName name) => Array.Find(Shared, assembly => assembly.GetName().Name == name.Name);
}
