"""The words of workings: small words, ways and turnings, words that join lines, functions, Greek names. Knows no
names of a problem.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from .tree import Function

_SPELLED: Mapping[Function, str] = {"sin": "sin sine", "cos": "cos cosine", "tan": "tan tangent"}
INVERSE: Mapping[Function, Function] = {"sin": "asin", "cos": "acos", "tan": "atan"}
FUNCTIONS: Mapping[str, Function] = {
    "sqrt": "sqrt",
    **{word: name for name, words in _SPELLED.items() for word in words.split()},
    **{
        prefix + word: INVERSE[name]
        for name, words in _SPELLED.items()
        for word in words.split()
        for prefix in ("a", "arc", "inv")
    },
}

GREEK: Mapping[str, str] = {
    "alpha": "α",
    "beta": "β",
    "gamma": "γ",
    "delta": "δ",
    "epsilon": "ε",
    "zeta": "ζ",
    "eta": "η",
    "theta": "θ",
    "kappa": "κ",
    "lambda": "λ",
    "mu": "μ",
    "nu": "ν",
    "xi": "ξ",
    "pi": "π",
    "rho": "ρ",
    "sigma": "σ",
    "tau": "τ",
    "phi": "φ",
    "chi": "χ",
    "psi": "ψ",
    "omega": "ω",
}


def _all(words: str) -> frozenset[str]:
    return frozenset(words.split())


GLUE = _all("so therefore thus hence then giving gives implies ie")
JOINTS = _all("and with where using for when if since because as taking but while")  # between two equations
LEADS = (
    GLUE
    | JOINTS
    | _all("""we get find solve have know given take let now also first next finally again answer ans check use
        used here it that is yields""")
)
COMPASS = frozenset(("n of e", "n of w", "s of e", "s of w"))
SMALL = (
    _all("""a about above acting action again all along also am an and angle another answer ans anti
        anticlockwise approx are around as at away back because below both but by can't check clockwise
        compression counter counterclockwise ccw cw direction do does down downward downwards each east eg
        either end for force forward forwards from front giving go goes going has have he her here his
        horizontal horizontally ie if in into is it its joint just left leftward leftwards level magnitude
        muscle my near needs no north not of off ok on only onto opposite or our out outward outwards over
        per perpendicular pointing pull pulling pulls push pushes pushing resultant right rightward
        rightwards same she since size so south still straight tension that the their them then there they
        this to too total toward towards true until up upper upright upward upwards using vertical
        vertically vs was we weight were west when where which while with without yes""")
    | COMPASS
)
SHORT = (
    _all("""am an as at be by cw do dr eg er go he hi id if in is it me mr ms my no of oh ok on or pe qu re so
        th to up us vs we ye ap ad et al la le de el en es un il im da du kp oz st gf nt hg""")
)  # of two letters, and no letter with a subscript
SUMS = _all("sum net")
SENSES = _all(
    "up down left right upward downward clockwise counter anti anticlockwise counterclockwise cw ccw acw positive "
    "taking take"
)
SUMMED: Mapping[str, str] = {"moment": "M", "moments": "M", "torque": "T", "torques": "T", "force": "F", "forces": "F"}
APPOSED = (
    _all("""the so force pull push weight reaction muscle joint tension resultant load distance mass angle size
        magnitude unknown value flexor extensor our my""")
)  # words before a letter that leave it what it is: "muscle force Fm"
ABOUT = _all("approx approximately about roughly ca circa")
SPOKEN: Mapping[str, str] = {"times": "times", "plus": "plus", "minus": "minus"}
ABBREVIATED = _all("approx ca fig eq no lb lbs in ft ins vs deg degs cm kg mm e g i resp")
NOUNS = _all("""arm arms leg can bag jug rod bar box cup pin hip toe jaw net sum mid end rad deg ans max min tot ref
        may way key any why say day mix fix""")  # of three letters, and no letter with a subscript

_WAYS: tuple[tuple[str, str], ...] = (
    ("counter-clockwise", r"(?:counter|anti)[ -]?clockwise|\bccw\b|\bacw\b"),
    ("clockwise", r"(?<![a-z-])(?<!counter )(?<!anti )clockwise|\bcw\b"),
    ("below horizontal", r"\b(?:below|under|beneath)(?: the)? (?:horizontal|level)"),
    ("above horizontal", r"\b(?:above|over)(?: the)? (?:horizontal|level)"),
    ("below horizontal", r"\b(?:south|s) of (?:east|west|e|w)\b"),
    ("above horizontal", r"\b(?:north|n) of (?:east|west|e|w)\b"),
    ("right", r"\bof (?:east|e)\b"),
    ("left", r"\bof (?:west|w)\b"),
    ("left of vertical", r"\bleft of(?: the)? vertical"),
    ("right of vertical", r"\bright of(?: the)? vertical"),
    ("from vertical", r"\b(?:from|to|with|off|against)(?: the)? vertical"),
    ("from horizontal", r"\b(?:from|to|with|off|against)(?: the)? horizontal"),
    ("away from", r"\baway from(?: the| his| her| its)? ([a-z]+)"),
    ("toward", r"\btowards?(?: the| his| her| its)? ([a-z]+)"),
    ("up", r"\bup(?:wards?)?\b(?! to\b)"),
    ("down", r"\bdown(?:wards?)?\b"),
    ("left", r"\bleft(?:wards?)?\b(?! of\b)"),
    ("right", r"\bright(?:wards?)?\b(?! angle| of\b)"),
)
_EACH = tuple((way, re.compile(pattern)) for way, pattern in _WAYS)


def directions(text: str) -> tuple[str, ...]:
    """The ways that a remark names, in the order they stand in it: ("up",), ("toward hand",), ("below horizontal",)."""
    plain = " ".join(text.casefold().split())
    found = [
        (hit.start(), f"{way} {hit[1]}" if hit.re.groups else way)
        for way, pattern in _EACH
        for hit in pattern.finditer(plain)
    ]
    return tuple(dict.fromkeys(way for _, way in sorted(found)))
