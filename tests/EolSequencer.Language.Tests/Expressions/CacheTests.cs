using System.Runtime.CompilerServices;
using System.Runtime.Loader;
using System.Security.Cryptography;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>A station starts with the code it compiled before, and with nothing that anybody has put in its place.</summary>
public sealed class CacheTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private ExpressionCache Cache => ExpressionCache.In(_folder.Path);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void What_was_compiled_is_found_again_with_all_that_was_found_out()
    {
        var first = Load.Of(Cache);
        var written = File.GetLastWriteTimeUtc(_folder.Only(".dll"));
        var second = Load.Of(Cache);

        Assert.Equal(written, File.GetLastWriteTimeUtc(_folder.Only(".dll")));
        Assert.Equal(first.Batch.Hash, second.Batch.Hash);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(_folder.Only(".dll")))), second.Batch.Hash);
        foreach (var (one, other) in first.Expressions.Zip(second.Expressions))
        {
            Assert.Equal(one.Shape, other.Shape);
            Assert.Equal(one.Channels, other.Channels);
            Assert.Equal(one.Results.Select(use => use.Optional), other.Results.Select(use => use.Optional));
            Assert.Equal(
                one.Results.Select(use => use.Resolve(InForce(), "asker")), other.Results.Select(use => use.Resolve(InForce(), "asker")));
        }

        var scope = new FixedScope().With("bus.vehicle_speed", 5m, "km/h").With("rollers.speed", 1m, "m/s");
        Assert.Equal("5 km/h", scope.Evaluate(second.Expressions[6]).ToString());
    }

    [Fact]
    public void The_same_texts_give_the_same_code() =>
        Assert.Equal(Load.Of(ExpressionCache.None).Batch.Hash, Load.Of(ExpressionCache.None).Batch.Hash);

    [Fact]
    public void Nothing_to_compile_has_no_hash()
    {
        var batch = new ExpressionBatch(new(), Cache);
        Assert.True(batch.Compile());
        Assert.Equal("", batch.Hash);
        Assert.Empty(_folder.Names);
    }

    [Fact]
    public void Another_text_is_compiled_anew()
    {
        Load.Of(Cache, "bus.gear > 1");
        Load.Of(Cache, "bus.gear > 2");
        Assert.Equal(2, Directory.GetFiles(_folder.Path, "*.dll").Length);
    }

    [Theory]
    [InlineData(".dll")]
    [InlineData(".pdb")]
    [InlineData(".facts")]
    public void A_changed_file_is_thrown_away_and_compiled_again(string extension)
    {
        var hash = Load.Of(Cache).Batch.Hash;
        var path = _folder.Only(extension);
        var bytes = File.ReadAllBytes(path);
        var whole = bytes.ToArray();
        bytes[bytes.Length / 2] ^= 1;
        File.WriteAllBytes(path, bytes);

        Assert.Equal(hash, Load.Of(Cache).Batch.Hash);
        Assert.Equal(whole, File.ReadAllBytes(path));
    }

    [Fact]
    public void Code_that_is_not_on_the_list_is_not_used()
    {
        Load.Of(Cache, "bus.gear > 1");
        var key = Path.GetFileNameWithoutExtension(_folder.Only(".dll"));
        var original = File.ReadAllBytes(_folder.Only(".dll"));
        File.Delete(Path.Combine(_folder.Path, "compiled.list"));
        File.WriteAllBytes(Path.Combine(_folder.Path, key + ".dll"), [1, 2, 3]);

        Load.Of(Cache, "bus.gear > 1");
        Assert.Equal(original, File.ReadAllBytes(_folder.Only(".dll")));
    }

    [Theory]
    [InlineData(".dll")]
    [InlineData(".facts")]
    [InlineData("compiled.list")]
    public void A_missing_file_costs_time_and_nothing_else(string name)
    {
        var hash = Load.Of(Cache).Batch.Hash;
        File.Delete(_folder.Only(name));
        Assert.Equal(hash, Load.Of(Cache).Batch.Hash);
    }

    [Fact]
    public void A_folder_that_cannot_be_written_costs_time_and_nothing_else()
    {
        var file = Path.Combine(_folder.Path, "taken");
        File.WriteAllText(file, "");
        Load.Of(ExpressionCache.In(Path.Combine(file, "below")), "bus.gear > 1");
    }

    [Fact]
    public void No_half_written_file_stays_behind()
    {
        Load.Of(Cache);
        Assert.Equal(4, _folder.Names.Count());
    }

    [Fact]
    [Trait("case", "EXP-02")]
    public void A_warm_start_does_not_load_the_compiler()
    {
        Load.Of(Cache);
        var context = new Apart();
        var started = context.LoadFromAssemblyPath(typeof(CacheTests).Assembly.Location)
            .GetType(typeof(WarmStart).FullName!)!.GetMethod(nameof(WarmStart.Run))!.Invoke(null, [_folder.Path]);

        Assert.Equal("yes", started);
        Assert.Contains("EolSequencer.Language", context.Assemblies.Select(assembly => assembly.GetName().Name));
        Assert.True(context.CompilerWantedBy is null, context.CompilerWantedBy);
    }

    [Fact]
    public void The_test_of_a_warm_start_would_see_the_compiler()
    {
        var context = new Apart();
        context.LoadFromAssemblyPath(typeof(CacheTests).Assembly.Location)
            .GetType(typeof(WarmStart).FullName!)!.GetMethod(nameof(WarmStart.Run))!.Invoke(null, [_folder.Path]);
        Assert.NotNull(context.CompilerWantedBy);
    }

    [Fact]
    [Trait("case", "EXP-01")]
    public void Code_goes_when_its_expressions_go()
    {
        var code = LoadAndForget();
        for (var round = 0; round < 20 && code.IsAlive; round++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        Assert.False(code.IsAlive);
    }

    [Fact]
    public void Code_in_use_serves_a_second_load()
    {
        var first = Load.Of(Cache);
        var second = Load.Of(Cache);
        Assert.Same(Load.Code(first.Expressions[0]).Target, Load.Code(second.Expressions[0]).Target);
    }

    [Fact]
    [Trait("case", "EXP-01")]
    public void Running_500_vehicles_loads_no_further_code()
    {
        var load = Load.Of(Cache);
        var scope = new FixedScope().With("bus.vehicle_speed", 5m, "km/h").With("rollers.speed", 1m, "m/s").With("bus.brake_switch", true);
        var (thread, loads) = (Environment.CurrentManagedThreadId, 0);
        AssemblyLoadEventHandler count = (_, _) => loads += Environment.CurrentManagedThreadId == thread ? 1 : 0;
        AppDomain.CurrentDomain.AssemblyLoad += count;
        for (var vehicle = 0; vehicle < 500; vehicle++)
        {
            scope.Evaluate(load.Expressions[0]);
            scope.Evaluate(load.Expressions[6]);
        }

        AppDomain.CurrentDomain.AssemblyLoad -= count;
        Assert.InRange(loads, 0, 5);
        Assert.Single(load.Expressions.Select(expression => Load.Code(expression).Target).Distinct());
    }

    [Fact]
    public void Equal_expressions_share_their_function()
    {
        var load = Load.Of(ExpressionCache.None);
        Assert.Equal(Load.Function(load.Expressions[0]).Method, Load.Function(load.Expressions[7]).Method);
        Assert.NotEqual(Load.Function(load.Expressions[0]).Method, Load.Function(load.Expressions[1]).Method);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private WeakReference LoadAndForget() => Load.Code(Load.Of(Cache).Expressions[0]);

    private static Model.Expressions.Arguments InForce() => Model.Expressions.Arguments.None.With("wheel", new TextValue("rl"));

    /// <summary>Loads this project and what it brings along once more, apart from what other tests have loaded.</summary>
    private sealed class Apart() : AssemblyLoadContext("apart", isCollectible: false)
    {
        /// <summary>The calls that led to the compiler being loaded; null when it was not.</summary>
        public string? CompilerWantedBy { get; private set; }

        protected override System.Reflection.Assembly? Load(System.Reflection.AssemblyName name)
        {
            if (CompilerWantedBy is null && name.Name!.StartsWith("Microsoft.CodeAnalysis", StringComparison.Ordinal))
            {
                // Only names: the parameters of a method may be types of the compiler.
                var calls = new System.Diagnostics.StackTrace().GetFrames().Select(frame => frame.GetMethod()).Select(method => $"{method?.DeclaringType}.{method?.Name}");
                CompilerWantedBy = string.Join('\n', calls);
            }

            var path = Path.Combine(AppContext.BaseDirectory, name.Name + ".dll");
            return name.Name!.StartsWith("xunit", StringComparison.OrdinalIgnoreCase) || !File.Exists(path) ? null : LoadFromAssemblyPath(path);
        }
    }
}
