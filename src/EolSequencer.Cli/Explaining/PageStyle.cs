namespace EolSequencer.Cli.Explaining;

/// <summary>
/// How the page looks. Black on white, nothing said by colour alone, letters of 11 pt and more for arm's length. Without
/// <c>&lt;</c>, <c>&gt;</c> and <c>&amp;</c>, which XML and HTML read differently in a style.
/// </summary>
internal static class PageStyle
{
    public const string Text = """

        * { box-sizing: border-box; }
        body { margin: 0 auto; max-width: 210mm; padding: 8mm; background: white; color: black; font: 12pt/1.35 "Liberation Sans", Arial, Helvetica, sans-serif; }
        h1 { font-size: 20pt; margin: 0 0 3mm; }
        h2 { font-size: 15pt; margin: 8mm 0 2mm; }
        .vin { white-space: nowrap; letter-spacing: 0.04em; }
        dl { display: grid; grid-template-columns: max-content 1fr; gap: 0.6mm 4mm; margin: 0 0 5mm; }
        dt { font-weight: bold; }
        dd { margin: 0; }
        table { width: 100%; border-collapse: collapse; table-layout: fixed; }
        thead { display: table-header-group; }
        th, td { border: 0.3mm solid black; padding: 1.2mm 1.8mm; text-align: left; vertical-align: top; overflow-wrap: anywhere; }
        col.box { width: 15mm; } col.number { width: 12mm; } col.must { width: 40mm; } col.time { width: 22mm; }
        .running th { border: 0; border-bottom: 0.6mm solid black; font-size: 11pt; padding-left: 0; }
        td.box { text-align: center; }
        td.number, td.time { text-align: right; white-space: nowrap; }
        td.must { font-weight: bold; }
        input { appearance: none; width: 8mm; height: 8mm; margin: 0; border: 0.5mm solid black; border-radius: 1mm; background: white; }
        input:checked { background: linear-gradient(45deg, transparent 46%, black 46%, black 54%, transparent 54%), linear-gradient(-45deg, transparent 46%, black 46%, black 54%, transparent 54%); }
        .part th, .part td { border-top: 1.2mm solid black; font-size: 15pt; }
        .part td.time { font-size: 12pt; }
        .group th, .beside th { font-weight: normal; }
        .heading { font-weight: bold; }
        .group .heading { font-size: 14pt; }
        .beside .heading { font-style: italic; }
        tr.group th, tr.beside th { border-top: 0.8mm solid black; }
        .d2 td.what, .d2 th { border-left-width: 1mm; } .d3 td.what, .d3 th { border-left-width: 1.6mm; padding-left: 3mm; }
        .d4 td.what, .d4 th { border-left-width: 2.2mm; padding-left: 4mm; } .d5 td.what, .d5 th { border-left-width: 2.8mm; padding-left: 5mm; }
        .d6 td.what, .d6 th { border-left-width: 3.4mm; padding-left: 6mm; }
        p { margin: 0 0 0.8mm; }
        .prompt { font-size: 15pt; font-weight: bold; line-height: 1.25; }
        .place { display: block; font-weight: bold; text-decoration: underline; }
        .heading + .place { display: inline; margin-left: 3mm; }
        .caution { border: 0.8mm solid black; padding: 1mm 2mm; font-size: 13pt; }
        .facts { list-style: none; margin: 0 0 0.8mm; padding: 0; font-size: 11pt; font-weight: normal; }
        .facts li { display: inline; }
        .facts li:not(:last-child)::after { content: "  ·  "; }
        .id { font-size: 11pt; font-family: "Liberation Mono", Consolas, monospace; }
        .small { font-size: 11pt; }
        img { float: right; max-width: 45mm; max-height: 40mm; margin: 0 0 1mm 2mm; }
        section ul { padding-left: 5mm; }
        .line { border-bottom: 0.3mm solid black; height: 12mm; }
        footer { margin-top: 8mm; break-inside: avoid; }
        @page { size: A4; margin: 11mm 10mm 14mm; @bottom-right { content: counter(page) " / " counter(pages); font: 11pt sans-serif; } }
        @media print {
          body { max-width: none; padding: 0; }
          tr, li { break-inside: avoid; }
          .part, .group, .beside { break-after: avoid; }
        }

        """;
}
