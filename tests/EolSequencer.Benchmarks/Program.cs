using EolSequencer.Benchmarks;

return args is [var name, ..] && Catalogue.Find(name) is { } run ? run(args[1..]) : Catalogue.Usage();
