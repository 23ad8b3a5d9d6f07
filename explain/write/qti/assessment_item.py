"""One question as an assessment item: what is declared, what is shown, and how a response is scored."""

from __future__ import annotations

from collections.abc import Iterator
from xml.etree import ElementTree
from xml.etree.ElementTree import Element, SubElement

from ...document.untrusted_text import one_line
from .elements import Files, add_text, body, filled
from .item import Choice, Field, Item, Number

NAMESPACE = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0"
SCHEMA = "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd"
INSTANCE = "http://www.w3.org/2001/XMLSchema-instance"
_LONG = "12"  # signs that a number may need


def assessment_item(item: Item, files: Files) -> bytes:
    """The item as an XML file; its figures go to `files`."""
    root = Element(
        "qti-assessment-item",
        {
            "xmlns": NAMESPACE,
            "xmlns:xsi": INSTANCE,
            "xsi:schemaLocation": f"{NAMESPACE} {SCHEMA}",
            "identifier": item.name,
            "title": one_line(item.title),
            "adaptive": "false",
            "time-dependent": "false",
            "xml:lang": item.language,
        },
    )
    numbered = tuple(enumerate(item.fields, 1))
    root.extend(_response(place, field) for place, field in numbered)
    root.extend(_outcomes(item))
    shown = SubElement(root, "qti-item-body")
    inside = SubElement(shown, "div")
    inside.extend(list(body(item.before, files)))  # extend() hides the words of a TypeError
    inside.extend(_asked(place, field) for place, field in numbered)
    inside.extend(list(body(item.after, files)))
    scored = SubElement(root, "qti-response-processing")
    scored.extend(each for place, field in numbered for each in _scoring(place, field))
    for parent in (root, shown, inside, scored):
        _by_lines(parent)
    return document(root)


def document(root: Element) -> bytes:
    """An element as a whole file."""
    content: str = ElementTree.tostring(root, encoding="unicode")
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{content.strip()}\n'.encode()


def _by_lines(parent: Element) -> None:
    """Each child on a line of its own; only for elements that hold no text."""
    parent.text = "\n"
    for child in parent:
        child.tail = "\n"


# ---------------------------------------------------------------------- what is declared
def _response(place: int, field: Field) -> Element:
    kind = "float" if isinstance(field, Number) else "identifier"
    found = Element(
        "qti-response-declaration",
        {"identifier": f"RESPONSE{place}", "cardinality": "single", "base-type": kind},
    )
    right = SubElement(SubElement(found, "qti-correct-response"), "qti-value")
    right.text = repr(field.value) if isinstance(field, Number) else _right(field)
    return found


def _right(field: Choice) -> str:
    return next(_option(place) for place, each in enumerate(field.options, 1) if each.right)


def _option(place: int) -> str:
    return f"CHOICE{place}"


def _outcomes(item: Item) -> Iterator[Element]:
    most = str(len(item.fields))
    yield _outcome("SCORE", "float", "0", most)
    yield _outcome("MAXSCORE", "float", most)
    for place, field in enumerate(item.fields, 1):
        if isinstance(field, Choice):
            yield _outcome(f"FEEDBACK{place}", "identifier")


def _outcome(name: str, kind: str, value: str = "", most: str = "") -> Element:
    about = {"identifier": name, "cardinality": "single", "base-type": kind}
    found = Element("qti-outcome-declaration", about | ({"normal-maximum": most} if most else {}))
    if value:
        SubElement(SubElement(found, "qti-default-value"), "qti-value").text = value
    return found


# ---------------------------------------------------------------------- what is shown
def _asked(place: int, field: Field) -> Element:
    if isinstance(field, Number):
        found = filled("p", field.label)
        add_text(found, ": ")
        SubElement(
            found,
            "qti-text-entry-interaction",
            {"response-identifier": f"RESPONSE{place}", "expected-length": _LONG},
        )
        add_text(found, f" {field.unit}" if field.unit else "")
        return found
    found = Element(
        "qti-choice-interaction",
        {"response-identifier": f"RESPONSE{place}", "max-choices": "1", "shuffle": "false"},
    )
    found.append(filled("qti-prompt", field.label))
    for number, each in enumerate(field.options, 1):
        choice = filled("qti-simple-choice", each.shown, identifier=_option(number))
        if each.hint:
            choice.append(
                filled(
                    "qti-feedback-inline",
                    each.hint,
                    outcome_identifier=f"FEEDBACK{place}",
                    identifier=_option(number),
                    show_hide="show",
                )
            )
        found.append(choice)
    _by_lines(found)
    return found


# ---------------------------------------------------------------------- how it is scored
def _scoring(place: int, field: Field) -> Iterator[Element]:
    response = f"RESPONSE{place}"
    condition = Element("qti-response-condition")
    right = SubElement(condition, "qti-response-if")
    right.append(_compared(field, response))
    total = SubElement(SubElement(right, "qti-set-outcome-value", {"identifier": "SCORE"}), "qti-sum")
    SubElement(total, "qti-variable", {"identifier": "SCORE"})
    SubElement(total, "qti-base-value", {"base-type": "float"}).text = "1"
    yield condition
    if isinstance(field, Choice):
        said = Element("qti-set-outcome-value", {"identifier": f"FEEDBACK{place}"})
        SubElement(said, "qti-variable", {"identifier": response})
        yield said


def _compared(field: Field, response: str) -> Element:
    """The right value stands first: the bounds are those of the first expression.

    A relative tolerance is in per cent, and its lower bound is the value less that share of it, which for a value below
    nothing is the upper one; so such a value gets the same bounds as an absolute tolerance.
    """
    if isinstance(field, Choice):
        found = Element("qti-match")
    elif field.within or field.value <= 0:
        found = _equal("absolute", field.within or field.share * abs(field.value))
    else:
        found = _equal("relative", field.share * 100)
    SubElement(found, "qti-correct", {"identifier": response})
    SubElement(found, "qti-variable", {"identifier": response})
    return found


def _equal(mode: str, tolerance: float) -> Element:
    """Equal within a tolerance that is the same on both sides."""
    return Element("qti-equal", {"tolerance-mode": mode, "tolerance": f"{tolerance:.6g} {tolerance:.6g}"})
