"""Reads a package of questions back with lxml, and scores a response as the standard says; shares nothing with the
program.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any
from zipfile import ZipFile

from lxml import etree

QTI = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"  # the four namespaces: from memory
MANIFEST = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"
LOM = "http://ltsc.ieee.org/xsd/LOM"
MATHML = "http://www.w3.org/1998/Math/MathML"
SVG = "http://www.w3.org/2000/svg"
# What the example files happen not to have. The standard takes XHTML's tables and MathML 3 in whole (from memory).
INLINE = {"strong", "em", "math"}
BEYOND: Mapping[str, set[str]] = {
    "table": {"caption", "thead"},
    "thead": {"tr"},
    "tr": {"th"},
    **dict.fromkeys(("th", "td", "li", "p", "qti-prompt"), INLINE),
}
FORMULAS = set("math mi mn mo mtext mspace mrow mfrac msqrt msub msup msubsup".split())
OF_FORMULAS = set("display form stretchy lspace rspace width".split())
STRICT = etree.XMLParser(resolve_entities=False, no_network=True, load_dtd=False)


@cache
def vocabulary() -> Mapping[str, Mapping[str, list[str]]]:
    """Names met in the standard body's public example files; the file names its source."""
    found: Mapping[str, Mapping[str, list[str]]] = json.loads(
        (Path(__file__).parent / "qti3_vocabulary.json").read_text("utf-8")
    )
    return found


def name(element: Any) -> str:
    return str(etree.QName(element).localname)


def unknown(root: Any) -> Iterator[str]:
    """Elements where the standard's examples have none, and attributes that they do not have."""
    children, attributes = vocabulary()["children"], vocabulary()["attributes"]
    if name(root) not in children["(root)"]:
        yield name(root)
    for element in root.iter():
        if not isinstance(element.tag, str):
            yield f"a comment or an instruction: {element.text}"
            continue
        own, parent, space = name(element), element.getparent(), etree.QName(element).namespace
        if (space == MATHML) != (own in FORMULAS):
            yield f"{own} in {space}"
        if space == MATHML:
            yield from (f"{own} {each}" for each in map(_local, element.attrib) if each not in OF_FORMULAS)
            if parent is not None and etree.QName(parent).namespace == MATHML:
                continue
        elif space not in (QTI, MANIFEST, LOM):
            yield f"{own} in {space}"
        else:
            known = {*attributes.get(own, ()), *({"scope"} if own == "th" else ())}
            yield from (f"{own} {each}" for each in map(_local, element.attrib) if each not in known)
        if parent is not None and own not in {*children.get(name(parent), ()), *BEYOND.get(name(parent), ())}:
            yield f"{name(parent)} > {own}"


def _local(attribute: str) -> str:
    return str(etree.QName(attribute).localname)


@dataclass
class Question:
    """An item as it was read back."""

    path: str
    root: Any

    def all(self, tag: str) -> list[Any]:
        return list(self.root.iter(f"{{{QTI}}}{tag}"))

    @property
    def title(self) -> str:
        return str(self.root.get("title"))

    @property
    def said(self) -> str:
        """Everything that is shown."""
        return " ".join("".join(self.all("qti-item-body")[0].itertext()).split())

    @property
    def right(self) -> list[str]:
        """The right response to each field."""
        return ["".join(each.itertext()).strip() for each in self.all("qti-correct-response")]

    @property
    def values(self) -> list[float]:
        return [float(each) for each in self.right]

    @property
    def choices(self) -> list[list[tuple[str, str, str]]]:
        """Of each field with choices: identifier, what is shown, and the feedback."""
        return [
            [(str(each.get("identifier")), (each.text or "").strip(), self._feedback(each)) for each in found]
            for field in self.all("qti-choice-interaction")
            for found in [field.findall(f"{{{QTI}}}qti-simple-choice")]
        ]

    def _feedback(self, choice: Any) -> str:
        return " ".join("".join(each.itertext()) for each in choice.findall(f"{{{QTI}}}qti-feedback-inline"))

    def scored(self, *responses: str) -> float:
        """The score of one response for each field, by the rules that the item states."""
        declared = {each.get("identifier"): each for each in self.all("qti-response-declaration")}
        given = dict(zip(declared, responses, strict=True))
        score = 0.0
        for condition in self.all("qti-response-if"):
            test, reward = condition
            assert name(reward) == "qti-set-outcome-value" and reward.get("identifier") == "SCORE"
            first, second = test
            assert (name(first), name(second)) == ("qti-correct", "qti-variable")
            right = "".join(declared[first.get("identifier")].itertext()).strip()
            score += _holds(test, right, given[second.get("identifier")])
        return score


def _holds(test: Any, right: str, given: str) -> bool:
    """qti-match and qti-equal, from memory of the standard: a relative tolerance is in per cent of the first value, and
    the second must lie between the bounds, as they come out.
    """
    if name(test) == "qti-match":
        return right == given
    assert name(test) == "qti-equal"
    below, above = map(float, test.get("tolerance").split())
    value, said = float(right), float(given)
    if test.get("tolerance-mode") == "relative":
        return value * (1 - below / 100) <= said <= value * (1 + above / 100)
    assert test.get("tolerance-mode") == "absolute"
    return value - below <= said <= value + above


@dataclass
class Package:
    """All files of a package by their paths; the manifest and the items as they parse."""

    files: Mapping[str, bytes]

    @classmethod
    def read(cls, content: bytes) -> Package:
        with ZipFile(BytesIO(content)) as archive:
            assert archive.testzip() is None
            names = archive.namelist()
            assert len(set(names)) == len(names)
            return cls({each: archive.read(each) for each in names})

    def tree(self, path: str) -> Any:
        return etree.fromstring(self.files[path], STRICT)

    @property
    def manifest(self) -> Any:
        return self.tree("imsmanifest.xml")

    @property
    def resources(self) -> list[Any]:
        return list(self.manifest.iter(f"{{{MANIFEST}}}resource"))

    @property
    def questions(self) -> list[Question]:
        return [Question(each.get("href"), self.tree(each.get("href"))) for each in self.resources]

    def faults(self) -> Iterator[str]:
        """What a platform could not take in: every rule that holds for all packages."""
        listed = [each.get("href") for each in self.manifest.iter(f"{{{MANIFEST}}}file")]
        if sorted(listed) != sorted(set(self.files) - {"imsmanifest.xml"}):
            yield f"listed: {listed}; there: {sorted(self.files)}"
        yield from unknown(self.manifest)
        names = [each.get("identifier") for each in self.resources]
        yield from (f"the identifier {each}" for each in names if not re.fullmatch(r"[A-Za-z_][\w.-]*", each, re.ASCII))
        if len(set(names)) != len(names):
            yield f"one identifier twice: {names}"
        for resource, question in zip(self.resources, self.questions, strict=True):
            yield from (f"{question.path}: {each}" for each in unknown(question.root))
            own = [each.get("href") for each in resource.iter(f"{{{MANIFEST}}}file")]
            shown = [f"items/{each.get('src')}" for each in question.all("img")]
            if own != [question.path, *shown] or question.root.get("identifier") != resource.get("identifier"):
                yield f"{question.path}: its files are {own}, it shows {shown}"
            for image in question.all("img"):
                yield from self._figure(f"items/{image.get('src')}", image.get("alt"))
            yield from _joined(question)

    def _figure(self, path: str, alt: str) -> Iterator[str]:
        figure = self.tree(path)
        if figure.tag != f"{{{SVG}}}svg" or figure.find(f"{{{SVG}}}desc").text != alt or len(alt) < 40:
            yield f"{path}: the description is {alt}"
        tags = {name(each) for each in figure.iter()}
        if not tags <= set("svg title desc g path line circle rect polygon".split()):
            yield f"{path}: {tags}"


def _joined(question: Question) -> Iterator[str]:
    """Whether each field has its declaration, each declaration its field, each feedback its outcome."""
    declared = [each.get("identifier") for each in question.all("qti-response-declaration")]
    fields = [each.get("response-identifier") for each in question.root.iter() if each.get("response-identifier")]
    if declared != fields or not fields:
        yield f"{question.path}: declared {declared}, asked {fields}"
    outcomes = {each.get("identifier") for each in question.all("qti-outcome-declaration")}
    used = {each.get("outcome-identifier") for each in question.all("qti-feedback-inline")}
    used |= {each.get("identifier") for each in question.all("qti-set-outcome-value")}
    if not used <= outcomes:
        yield f"{question.path}: outcomes {used - outcomes}"
    for field in question.all("qti-choice-interaction"):
        for choice in field.findall(f"{{{QTI}}}qti-simple-choice"):
            for said in choice.findall(f"{{{QTI}}}qti-feedback-inline"):
                if said.get("identifier") != choice.get("identifier"):
                    yield f"{question.path}: feedback {said.get('identifier')}"
    most = [each for each in question.all("qti-outcome-declaration") if each.get("identifier") == "MAXSCORE"]
    if "".join(most[0].itertext()) != str(len(fields)):
        yield f"{question.path}: at most {''.join(most[0].itertext())} of {len(fields)}"
