"""Turns operators in words into signs: times, over, plus, squared, the root of, "which makes". Touches no other
word.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from .limits import LONGEST_LINE

UNIT = (
    r"(?:k?N[ ./*-]?(?:cm|mm|m)\b|N/cm\^?2|kg[ ./*-]?(?:cm|m)\b|lbf?[ "
    r"-]?(?:in|ft)|kg|kN|N|cm|mm|m|lbf?|lbs|in|ft|deg(?:rees?)?|°|%|g|grams?|[Nn]ewtons?|metres?|meters?|kilos?|centimet(?:re|er)s?|pounds?|inches)"
)
_PLAIN = r"([-+]?[\d.]+)"
_FORCE, _ARM = r"(?:N|lbf?|lbs|kg)", r"(?:cm|m|inches|in|ft)"
_MOMENT = r"N ?c?m|lb[ -]?in|lb[ -]?ft"
_BEFORE = r"(?<=[\d)a-zA-Zα-ω°%])"
_FUNCTIONS = (("sine?", "sin"), ("cos(?:ine)?", "cos"), ("tan(?:gent)?", "tan"))
_NEXT = r"(?=(?:the )?(?:sin|cos|tan|sqrt|asin|acos|atan|[\d.(]|[A-Za-zα-ω]\b|[A-Z][a-z]?\b|[A-Za-zα-ω]_\w+|theta))"
_COMES = re.compile(
    r"(?:,?\s*(?:which|that|it|this)?\s*(?:comes? (?:out )?(?:to|at|as)|came (?:out )?(?:to|at)|works? out "
    r"(?:at|as|to)|adds? up to|makes|make|gives|give|equals|is|has to be|must be|must "
    r"equal|giving|making|leaves|leaving|ends up(?: as| at)?|becomes)"
    r"|,?\s*(?:which|that)(?:\s+is|\s+are|'s)|,\s*so|\s+so)\s+(?:about|roughly|only|just|around|nearly|again|approximately|approx\.?)?\s*(?=[-+]?[\d.])",
    re.I,
)
_WORK = re.compile(
    r"[\d)A-Za-zα-ω°%]\s*[*/]\s*[\d(A-Za-zα-ω]|\d\s*[A-Za-z]{0,3}\s[+-]\s[\d(A-Z]|sqrt|(?:\b|\d)(?:sin|cos|tan|asin|acos|atan)(?:\b|\d)|\d\)?\(\d|θ"
)
_GOES_ON = re.compile(rf"[-+]?[\d.]+\s*{UNIT}?\s*[*/+x×(-]\s*[\d(]")
_ENDS = re.compile(rf"(?:\d|\)|\b{UNIT}|°|%|θ|\b[A-Za-z])\s*$")


_TURNS = r"(?:clockwise|cw|counter-?\s?clockwise|ccw|anti-?\s?clockwise|acw)"
_SIDE = r"(?:(?:sum of |total |all )?(?:the )?(?:{of})?\s*(?:to the )?{way}(?:wards?)?\s*(?:{of})?)"
_FORCES, _MOMENTS = "forces?|pulls?|parts?|components?", "moments?|torques?|turns"
_HEADINGS = tuple(  # "up = down:", before the balance itself
    (re.compile(rf"(?i)^\s*{_SIDE.format(of=of, way=way)}\s*=\s*{_SIDE.format(of=of, way=way)}\s*:\s*(?=\S)"), words)
    for way, of, words in (
        ("(?:left|right)", _FORCES, "horizontal: "),
        ("(?:up|down)", _FORCES, "vertical: "),
        (_TURNS, _MOMENTS, "moments: "),
    )
)


def spoken(line: str, compounds: Iterable[tuple[str, str]] = ()) -> str:
    """A plain line with signs for the words that stand for signs."""
    if len(line) >= LONGEST_LINE:
        return line
    for heading, words in _HEADINGS:
        line = heading.sub(words, line)
    for one, other in compounds:
        line = re.sub(rf"(?i)\b({one})\s+and\s+(?:the\s+)?({other})\b", r"\1 \2", line)
    return _results(_arms(_operators(_small(line))))


def _small(line: str) -> str:
    """Ratios, halves, grams, squares."""
    line = re.sub(r"(?<![\d.])(\d+\s*/\s*\d+)\s+of\s+(?=[\d.])", r"\1 * ", line)
    line = re.sub(r"(?i)\b(?:half|one half) of (?=[\d.])", " 0.5 * ", line)
    line = re.sub(r"(?i)\btwice (?=[\d.])", " 2 * ", line)
    line = re.sub(
        rf"\(\s*{_PLAIN}\s*,\s*{_PLAIN}\s*\)\s*/\s*([\d.]+)\s*=\s*\(\s*{_PLAIN}\s*,\s*{_PLAIN}\s*\)",
        r" \1 / \3 = \4 ; \2 / \3 = \5 ",
        line,
    )
    line = re.sub(rf"\(\s*{_PLAIN}\s*,\s*{_PLAIN}\s*\)", r" \1 ; \2 ", line)
    line = re.sub(
        rf"(?i)(\d\s*{UNIT})\s*[,(]?\s*(?:which is |that is |or |so )?in "
        r"(metres|meters|m|cm|centimetres|inches|newtons|kg)"
        r"(?: that(?:'s| is)| it(?:'s| is)| is| makes|,|:)? ([\d.]+)(?![\d.]|\s*[A-Za-z*/+])",
        r"\1 = \3 \2",
        line,
    )
    line = re.sub(r"(?<=\d) kg m\b(?!\s*/)", " kgm", line)
    line = re.sub(r"(?<![\d.])(?!0\s*:)(\d[\d.]*)\s*:\s*(\d[\d.]*)(?=\s*=)", r"\1 / \2", line)
    line = (
        re.sub(r"(?<![\d.:])(?!0\s*:)(\d[\d.]*) ?: ?(\d[\d.]*)(?![\d.]|\s*(?:[*/+x]|times))", r"\1 / \2", line)
        if re.search(r"\d ?: ?\d.*=|=.*\d ?: ?\d", line)
        else line
    )
    line = re.sub(rf"(\d\s*{UNIT}?)\s+:\s+(?=(?:sin|cos|tan|[\d.(])[^=:]*=)", r"\1 / ", line)
    if re.search(r"\b[1-9]\d{1,3}(?:\.\d+)? ?g\b(?!\s*=?\s*[\d.]+\s*N\b)", line) and re.search(r"kg", line):
        line = re.sub(r"(?<=\d) ?g(?=\s*(?:,|\)|=|;|$|which|that|\(|\+))", " grams", line)
    return line


def _operators(line: str) -> str:
    line = re.sub(r"(?i)\b(?:multiplied by|multiplied with)\b", " times ", line)
    line = re.sub(r"(?i)\bdivided by\b", " over ", line)
    line = re.sub(r"(?i)\b(?:take away|takeaway|less)\b(?=\s*[\d.])", " minus ", line)
    line = re.sub(r"(?i)^(\s*)(?:times|multiplied by)\s+(?=[\d.(])", r"\1* ", line)
    line = re.sub(r"(?i)^(\s*)(?:over|divided by)\s+(?=[\d.(])", r"\1/ ", line)
    line = re.sub(r"(?i)\b(?:added to)\b(?=\s*[\d.])", " plus ", line)
    line = re.sub(rf"(?i){_BEFORE}\s+times\s+(?:the\s+)?{_NEXT}", " * ", line)
    line = re.sub(r"(?i)(?<=[\d)mNgb°sd%])\s+over\s+(?=[\d.(]|[A-Za-z]\b|[A-Za-z]_\w|sin|cos)", " / ", line)
    for words, sign in _FUNCTIONS:
        line = re.sub(rf"(?i)\b(?:the\s+)?(?:a|arc |inverse |arc){words}(?:\s+of)?\s+(?=[\d(α-ω])", f"a{sign} ", line)
        line = re.sub(rf"(?i)\b(?:the\s+)?{words}(?:\s+of)?\s+(?=[\d(α-ω]|theta|phi)", f"{sign} ", line)
        line = re.sub(rf"(?i)\b{sign} of (?=[\d(α-ωA-Za-z])", f"{sign} ", line)
    line = re.sub(r"(?i)\btheta\b", "θ", line)
    line = re.sub(r"(?i)(?<=[\d)])\s*squared\b", "^2", line)
    line = re.sub(r"(?i)\b([A-Za-z])\s+squared\b", r"\1^2", line)
    line = re.sub(
        rf"(?i)([*/]\s*[\d.]+\s*{UNIT}?\s*=\s*[\d.]+\s*{UNIT}?)\s+plus\s+(?=[^=;,]*[*/][^=;,]*=)", r"\1 ; ", line
    )
    line = re.sub(
        r"(?i)\b(?:the\s+)?(?:square\s+)?root of\s+([\d.^ +()*/-]+?(?:\s(?:plus|minus|and)\s[\d.^ "
        r"+()*/-]+?)*)(\s*(?:,|;|=|\.?$|\b(?:which|that|so|gives|is|makes|equals|comes|giving|making)\b))",
        r"sqrt(\1)\2",
        line,
    )
    for word, sign in (("plus", "+"), ("minus", "-")):
        for _ in range(2):
            line = re.sub(
                rf"(?i)(?<=[\d)α-ω°A-Z])(\s*(?:{UNIT}|F|x)?)\s+{word}\s+"
                r"(?=[\d.(]|[A-Za-zα-ω]\b|[A-Z]\w?\b|[A-Za-z]_\w|sin|cos|tan|sqrt|the "
                r"\d)",
                rf"\1 {sign} ",
                line,
            )
    return re.sub(r"sqrt\(([^()]*)\)", lambda found: "sqrt(" + re.sub(r"\band\b|\bplus\b", "+", found[1]) + ")", line)


def _results(line: str) -> str:
    """What follows an expression and says what it comes to."""
    if "→" in line and len(line) < 200:
        line = re.sub(
            rf"(^|[;:,|]\s*)([^=;→|]*\d[^=;→|]*[*/][^=;→|]*\d[^=;→|]*?)\s*→\s*(?=[\d.]+\s*{UNIT}?\s*(?:$|[;,|(→]))",
            r"\1\2 = ",
            line,
        )
    parts = re.split(r"(;|→|\.(?=\s+[A-Z]))", line)
    return "".join(_result(part) for part in parts)


def _result(part: str) -> str:
    out, at = "", 0
    for found in _COMES.finditer(part):
        before = part[at : found.start()]
        segment = re.split(r"=|:|;|\b(?:and|so|which)\b", out + before)[-1]
        works = re.match(r"\s*(?:\*|/)\s*[\d.]", segment) or _WORK.search(segment) and _ENDS.search(segment)
        converts = re.search(rf"\d\s*{UNIT}\s*$", segment) and re.search(
            r"which is|that is|which makes|that's", found[0], re.I
        )
        goes_on = "so" in found[0].lower().split() and _GOES_ON.match(part[found.end() :])
        turns = re.search(rf"\d\s*{_FORCE} at \d[\d.]*\s*{_ARM}\s*$", segment)
        out += before + (" = " if (works or converts) and not goes_on or turns else found[0])
        at = found.end()
    return re.sub(rf"(\d\s*{_FORCE}) at (?=\d[\d.]*\s*{_ARM}\s*=)", r"\1 * ", out + part[at:])


def _arms(line: str) -> str:
    """A force at a distance, and behind an arrow its moment: "9.10 N at 24 cos30 = 20.8 cm -> 189"."""
    return re.sub(
        rf"(\d[\d.]*\s*{_FORCE}) at ((?:[^=;→]*=)?\s*([\d.]+\s*{_ARM}))\s*(?:→|;)\s*(?=[\d.]+\s*(?:{_MOMENT})?\s*$)",
        r"\1 at \2 ; \1 * \3 = ",
        line,
    )
