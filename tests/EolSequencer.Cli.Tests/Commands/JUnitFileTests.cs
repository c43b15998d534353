using System.Xml;
using System.Xml.Linq;
using System.Xml.Schema;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>A build server reads the results by a form that others have published; what it cannot read it shows as nothing.</summary>
public sealed class JUnitFileTests : IDisposable
{
    /// <summary>
    /// The structure that build servers take, written down from what the schema <c>junit-10.xsd</c> of the Jenkins plug-in for
    /// test results allows: elements, which attributes they have, which are required, and the form of a suite's time. Nothing
    /// else may stand in the file.
    /// </summary>
    private const string Form = """
        <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">
          <xs:simpleType name="time"><xs:restriction base="xs:string"><xs:pattern value="[0-9]+\.[0-9]{3}"/></xs:restriction></xs:simpleType>
          <xs:complexType name="told" mixed="true">
            <xs:attribute name="type" type="xs:string"/>
            <xs:attribute name="message" type="xs:string"/>
          </xs:complexType>
          <xs:element name="testsuites">
            <xs:complexType>
              <xs:sequence><xs:element ref="testsuite" minOccurs="0" maxOccurs="unbounded"/></xs:sequence>
              <xs:attribute name="name" type="xs:string"/>
              <xs:attribute name="time" type="time"/>
              <xs:attribute name="tests" type="xs:nonNegativeInteger"/>
              <xs:attribute name="failures" type="xs:nonNegativeInteger"/>
              <xs:attribute name="errors" type="xs:nonNegativeInteger"/>
            </xs:complexType>
          </xs:element>
          <xs:element name="testsuite">
            <xs:complexType>
              <xs:sequence><xs:element ref="testcase" minOccurs="0" maxOccurs="unbounded"/></xs:sequence>
              <xs:attribute name="name" type="xs:string" use="required"/>
              <xs:attribute name="tests" type="xs:nonNegativeInteger" use="required"/>
              <xs:attribute name="failures" type="xs:nonNegativeInteger" use="required"/>
              <xs:attribute name="errors" type="xs:nonNegativeInteger" use="required"/>
              <xs:attribute name="time" type="time"/>
              <xs:attribute name="file" type="xs:string"/>
            </xs:complexType>
          </xs:element>
          <xs:element name="testcase">
            <xs:complexType>
              <xs:choice minOccurs="0" maxOccurs="unbounded">
                <xs:element name="error" type="told"/>
                <xs:element name="failure" type="told"/>
              </xs:choice>
              <xs:attribute name="name" type="xs:string" use="required"/>
              <xs:attribute name="time" type="time"/>
              <xs:attribute name="classname" type="xs:string"/>
            </xs:complexType>
          </xs:element>
        </xs:schema>
        """;

    private readonly PlantCopy _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void The_file_has_the_form_and_says_what_came_out_otherwise()
    {
        _plant.Put("odd.expect.yaml", "expected-results: odd\nstation: startup_1\norder: FV-100231\ntests:\n  right: { verdict: pass, only: [rest] }\n  wrong: { verdict: pass, only: [rest], faults: [battery_voltage=12.2] }\n");

        var document = Run(1);

        var suite = Assert.Single(document.Root!.Elements("testsuite"), one => one.Attribute("name")!.Value == "odd");
        Assert.Equal(("2", "1", "0"), (suite.Attribute("tests")!.Value, suite.Attribute("failures")!.Value, suite.Attribute("errors")!.Value));
        var cases = suite.Elements("testcase").ToDictionary(one => one.Attribute("name")!.Value);
        Assert.Empty(cases["right"].Elements());
        Assert.Equal(["verdict: expected pass, found fail", "rest.voltage: expected pass, found fail"], cases["wrong"].Elements("failure").Select(one => one.Attribute("message")!.Value));
        Assert.Contains("odd.expect.yaml:6:21: verdict", cases["wrong"].Element("failure")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void What_no_xml_can_hold_is_replaced_and_all_else_kept()
    {
        _plant.Put("scripts/odd.yaml", """
            operator-script: odd
            answers:
              identity.label: { type: "\a < \U0001F69A" }
            """);
        _plant.Put("odd.expect.yaml", "expected-results: odd\nstation: startup_1\norder: FV-100231\ntests:\n  scanned: { verdict: fail, operator: odd, only: [identity.label], steps: { identity.label: { is: equals 1 } } }\n");

        var failure = Assert.Single(Run(1, "--name", "scanned").Descendants("failure"));

        Assert.Equal("value of identity.label: expected equals 1, found \uFFFD < \U0001F69A", failure.Attribute("message")!.Value);
    }

    [Fact]
    public void A_test_that_could_not_be_run_is_an_error_and_no_failure()
    {
        var station = Path.Combine(_plant.Root, "stations", "startup.yaml");
        File.WriteAllText(station, File.ReadAllText(station).Replace("simulated-sound-meter", "simulated-loudness", StringComparison.Ordinal));

        var root = Run(3, "--name", "good_petrol").Root!;

        Assert.Equal(("1", "0", "1"), (root.Attribute("tests")!.Value, root.Attribute("failures")!.Value, root.Attribute("errors")!.Value));
        Assert.Contains("simulated-loudness", Assert.Single(root.Descendants("error")).Attribute("message")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Times_are_virtual_so_the_same_tests_give_the_same_file()
    {
        string[] names = ["--name", "good_petrol", "--name", "wrong_label"];
        var first = Run(0, names);

        Assert.Equal(first.ToString(), Run(0, names).ToString());
        Assert.InRange((double)first.Descendants("testcase").First().Attribute("time")!, 100, 400); // minutes of a van, seconds of ours
    }

    [Fact]
    public void A_file_that_cannot_be_written_is_told()
    {
        var outcome = Eol.Run("test", _plant.Root, "--name", "wrong_label", "--junit", Path.Combine(_plant.Root, "no", "such", "folder.xml"));

        Assert.True(outcome.Code == 2, outcome.ToString());
        Assert.Contains("cannot be written", outcome.Output, StringComparison.Ordinal);
    }

    /// <summary>Runs the tests of the copied plant, and reads the file by the form.</summary>
    private XDocument Run(int code, params string[] more)
    {
        var path = Path.Combine(_plant.Root, "results.xml");
        var outcome = Eol.Run(["test", _plant.Root, "--junit", path, .. more]);
        Assert.True(outcome.Code == code, outcome.ToString());
        var document = XDocument.Load(path);
        var schemas = new XmlSchemaSet();
        schemas.Add(null, XmlReader.Create(new StringReader(Form)));
        document.Validate(schemas, (_, fault) => Assert.Fail(fault.Message));
        return document;
    }
}
