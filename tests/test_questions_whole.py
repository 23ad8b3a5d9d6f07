"""A question and its package, whole, as they are written: read as they stand here against the standard (1EdTech QTI
3.0, the assessment item and the content package) by who wrote them down.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile

import pytest
from formulas import a, one, q

from explain.document.passage import (
    Answer,
    Caution,
    Derivation,
    Drawing,
    Emphasis,
    Heading,
    Line,
    Maths,
    Paragraph,
    Picture,
    Prose,
    Reference,
    Strong,
    Table,
    Text,
)
from explain.write.figure.plot import drawn
from explain.write.qti.item import Choice, Item, Number, Option
from explain.write.qti.package import files_of, package


def says(words: str) -> Line:
    return (Text(words),)


ITEM = Item(
    "jug-1",
    "A jug\n& a palm",
    (
        Heading(2, says("Find")),
        Prose("A **jug**.\n\n- one\n- two"),
        Table("Given", (says("letter"), says("value")), (((Maths(one(a("F_B"))),), says("5 N")),)),
        Table("", (), ((says("x"),),)),
        Picture(Drawing((0.0, 0.0), "elbow"), "Forces", "A <level> forearm.", says("To scale.")),
        Picture(Drawing((0.0, 0.0), "hip"), "Forces", "Another."),
    ),
    (
        Number(says("Pull"), "N", 301.5, 0.01),
        Number((Text("Angle "), Maths(one(a("theta"))), Text(" of "), Strong("it")), "", -4.0, 0.01),
        Number(says("Part"), "N", 12.0, 0.01, 0.25),
        Choice(
            says("Which?"),
            (Option(says("5 N"), says("A mass is no force yet.")), Option((Maths(one(q("6", "N"))),), right=True)),
        ),
    ),
    (
        Paragraph((Text("See "), Reference("below", "x"), Emphasis(" it"), Text("."))),
        Caution(says("A model.")),
        Answer(says("so")),
    ),
    "en-GB",
)

ITEM_FILE = r"""<?xml version="1.0" encoding="UTF-8"?>
<qti-assessment-item xmlns="http://www.imsglobal.org/xsd/imsqtiasi_v3p0" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.imsglobal.org/xsd/imsqtiasi_v3p0 https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd" identifier="jug-1" title="A jug &amp; a palm" adaptive="false" time-dependent="false" xml:lang="en-GB">
<qti-response-declaration identifier="RESPONSE1" cardinality="single" base-type="float">
<qti-correct-response>
<qti-value>301.5</qti-value>
</qti-correct-response>
</qti-response-declaration>
<qti-response-declaration identifier="RESPONSE2" cardinality="single" base-type="float">
<qti-correct-response>
<qti-value>-4.0</qti-value>
</qti-correct-response>
</qti-response-declaration>
<qti-response-declaration identifier="RESPONSE3" cardinality="single" base-type="float">
<qti-correct-response>
<qti-value>12.0</qti-value>
</qti-correct-response>
</qti-response-declaration>
<qti-response-declaration identifier="RESPONSE4" cardinality="single" base-type="identifier">
<qti-correct-response>
<qti-value>CHOICE2</qti-value>
</qti-correct-response>
</qti-response-declaration>
<qti-outcome-declaration identifier="SCORE" cardinality="single" base-type="float" normal-maximum="4">
<qti-default-value>
<qti-value>0</qti-value>
</qti-default-value>
</qti-outcome-declaration>
<qti-outcome-declaration identifier="MAXSCORE" cardinality="single" base-type="float">
<qti-default-value>
<qti-value>4</qti-value>
</qti-default-value>
</qti-outcome-declaration>
<qti-outcome-declaration identifier="FEEDBACK4" cardinality="single" base-type="identifier" />
<qti-item-body>
<div>
<p>
<strong>Find</strong>
</p>
<p>A <strong>jug</strong>.</p>
<ul>
<li>one</li>
<li>two</li>
</ul>
<table>
<caption>Given</caption>
<thead>
<tr>
<th scope="col">letter</th>
<th scope="col">value</th>
</tr>
</thead>
<tbody>
<tr>
<th scope="row">
<math xmlns="http://www.w3.org/1998/Math/MathML" display="inline">
<msub>
<mi>F</mi>
<mtext>B</mtext>
</msub>
</math>
</th>
<td>5 N</td>
</tr>
</tbody>
</table>
<table>
<tbody>
<tr>
<th scope="row">x</th>
</tr>
</tbody>
</table>
<figure>
<img src="figures/jug-1.svg" alt="A &lt;level&gt; forearm." />
</figure>
<p>To scale.</p>
<figure>
<img src="figures/jug-1-2.svg" alt="Another." />
</figure>
<p>Pull: <qti-text-entry-interaction response-identifier="RESPONSE1" expected-length="12" /> N</p>
<p>Angle <math xmlns="http://www.w3.org/1998/Math/MathML" display="inline">
<mi>θ</mi>
</math> of <strong>it</strong>: <qti-text-entry-interaction response-identifier="RESPONSE2" expected-length="12" />
</p>
<p>Part: <qti-text-entry-interaction response-identifier="RESPONSE3" expected-length="12" /> N</p>
<qti-choice-interaction response-identifier="RESPONSE4" max-choices="1" shuffle="false">
<qti-prompt>Which?</qti-prompt>
<qti-simple-choice identifier="CHOICE1">5 N<qti-feedback-inline outcome-identifier="FEEDBACK4" identifier="CHOICE1" show-hide="show">A mass is no force yet.</qti-feedback-inline>
</qti-simple-choice>
<qti-simple-choice identifier="CHOICE2">
<math xmlns="http://www.w3.org/1998/Math/MathML" display="inline">
<mn>6</mn>
<mspace width="0.22em" />
<mtext>N</mtext>
</math>
</qti-simple-choice>
</qti-choice-interaction>
<p>See below<em> it</em>.</p>
<p>A model.</p>
<p>so</p>
</div>
</qti-item-body>
<qti-response-processing>
<qti-response-condition>
<qti-response-if>
<qti-equal tolerance-mode="relative" tolerance="1 1">
<qti-correct identifier="RESPONSE1" />
<qti-variable identifier="RESPONSE1" />
</qti-equal>
<qti-set-outcome-value identifier="SCORE">
<qti-sum>
<qti-variable identifier="SCORE" />
<qti-base-value base-type="float">1</qti-base-value>
</qti-sum>
</qti-set-outcome-value>
</qti-response-if>
</qti-response-condition>
<qti-response-condition>
<qti-response-if>
<qti-equal tolerance-mode="absolute" tolerance="0.04 0.04">
<qti-correct identifier="RESPONSE2" />
<qti-variable identifier="RESPONSE2" />
</qti-equal>
<qti-set-outcome-value identifier="SCORE">
<qti-sum>
<qti-variable identifier="SCORE" />
<qti-base-value base-type="float">1</qti-base-value>
</qti-sum>
</qti-set-outcome-value>
</qti-response-if>
</qti-response-condition>
<qti-response-condition>
<qti-response-if>
<qti-equal tolerance-mode="absolute" tolerance="0.25 0.25">
<qti-correct identifier="RESPONSE3" />
<qti-variable identifier="RESPONSE3" />
</qti-equal>
<qti-set-outcome-value identifier="SCORE">
<qti-sum>
<qti-variable identifier="SCORE" />
<qti-base-value base-type="float">1</qti-base-value>
</qti-sum>
</qti-set-outcome-value>
</qti-response-if>
</qti-response-condition>
<qti-response-condition>
<qti-response-if>
<qti-match>
<qti-correct identifier="RESPONSE4" />
<qti-variable identifier="RESPONSE4" />
</qti-match>
<qti-set-outcome-value identifier="SCORE">
<qti-sum>
<qti-variable identifier="SCORE" />
<qti-base-value base-type="float">1</qti-base-value>
</qti-sum>
</qti-set-outcome-value>
</qti-response-if>
</qti-response-condition>
<qti-set-outcome-value identifier="FEEDBACK4">
<qti-variable identifier="RESPONSE4" />
</qti-set-outcome-value>
</qti-response-processing>
</qti-assessment-item>
"""  # noqa: E501
MANIFEST = r"""<?xml version="1.0" encoding="UTF-8"?>
<manifest xmlns="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1 https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd http://ltsc.ieee.org/xsd/LOM https://purl.imsglobal.org/spec/md/v1p3/schema/xsd/imsmd_loose_v1p3p2.xsd" identifier="package-*">
 <metadata>
  <schema>QTI Package</schema>
  <schemaversion>3.0.0</schemaversion>
  <lom xmlns="http://ltsc.ieee.org/xsd/LOM">
   <general>
    <title>
     <string language="en">A title &amp; more</string>
    </title>
    <description>
     <string language="en">What is� in it</string>
    </description>
   </general>
  </lom>
 </metadata>
 <organizations />
 <resources>
  <resource identifier="jug-1" type="imsqti_item_xmlv3p0" href="items/jug-1.xml">
   <file href="items/jug-1.xml" />
   <file href="items/figures/jug-1.svg" />
   <file href="items/figures/jug-1-2.svg" />
  </resource>
  <resource identifier="two" type="imsqti_item_xmlv3p0" href="items/two.xml">
   <file href="items/two.xml" />
  </resource>
 </resources>
</manifest>
"""  # noqa: E501


def packed(*items: tuple[str, Mapping[str, bytes]]) -> ZipFile:
    return ZipFile(BytesIO(package(items, "A title & more", "What is\x00 in it")))


def test_a_whole_question() -> None:
    files = files_of(ITEM)
    assert ITEM_FILE == files["items/jug-1.xml"].decode().replace("><", ">\n<")
    assert ["items/jug-1.xml", "items/figures/jug-1.svg", "items/figures/jug-1-2.svg"] == list(files)
    pictures = [each for each in ITEM.before if isinstance(each, Picture)]
    assert [drawn(each).encode() for each in pictures] == list(files.values())[1:]


def test_a_whole_package() -> None:
    archive = packed(("jug-1", files_of(ITEM)), ("two", {"items/two.xml": b"<x/>"}))
    assert MANIFEST == re.sub("package-[0-9a-f]{16}", "package-*", archive.read("imsmanifest.xml").decode())
    assert ["imsmanifest.xml", *files_of(ITEM), "items/two.xml"] == archive.namelist()
    assert archive.read("items/two.xml") == b"<x/>"
    assert {((1980, 1, 1, 0, 0, 0), ZIP_DEFLATED, 0o644, 3)} == {
        (each.date_time, each.compress_type, each.external_attr >> 16, each.create_system)
        for each in archive.infolist()
    }  # 3: made on a system with permissions as of Unix (APPNOTE 4.4.2)


def test_a_package_is_named_by_what_is_in_it() -> None:
    names = [
        re.findall("package-[0-9a-f]{16}", packed(("two", {"items/two.xml": content})).read("imsmanifest.xml").decode())
        for content in (b"<x/>", b"<x/>", b"<y/>")
    ]
    assert (1, True, False) == (len(names[0]), names[0] == names[1], names[0] == names[2])


@pytest.mark.parametrize(
    ("value", "within", "tolerance"),
    [
        (200.0, 0.0, "relative 1 1"),
        (0.5, 0.0, "relative 1 1"),
        (200.0, 0.5, "absolute 0.5 0.5"),
        (-200.0, 0.0, "absolute 2 2"),
        (0.0, 0.0, "absolute 0 0"),
    ],
)
def test_a_number_is_right_within_its_tolerance(value: float, within: float, tolerance: str) -> None:
    item = Item("n", "N", (), (Number(says("x"), "N", value, 0.01, within),))
    text = files_of(item)["items/n.xml"].decode()
    assert [tolerance] == [
        f"{mode} {both}" for mode, both in re.findall('tolerance-mode="(.*?)" tolerance="(.*?)"', text)
    ]
    assert 'xml:lang="en">' in text


def test_a_question_has_no_derivation() -> None:
    with pytest.raises(TypeError, match="a Derivation in a question"):
        files_of(Item("n", "N", (Derivation(()),), ()))
