"""How units are written, each with the pattern of its words and signs; what is longer stands first."""

from __future__ import annotations

import re

_UNITS = (
    (
        "acc",
        r"N\s?/\s?kg|N kg\^?-1|m\s?/\s?s\s?(?:\^\s?\(?2\)?|2)|m/s/s|ft\s?/\s?s\s?(?:\^\s?\(?2\)?|2)|m "
        r"s\^?\(?-2\)?|ms\^?\(?-2\)?",
    ),
    ("N/cm2", r"N\s?/\s?cm\^?2|N per (?:sq(?:uare)? )?cm(?:\^?2)?|N/sq ?cm|N cm\^\(?-2\)?"),
    ("N/mm2", r"N\s?/\s?mm\^?2|N per (?:sq(?:uare)? )?mm(?:\^?2)?"),
    ("N/m2", r"N\s?/\s?m\^?2|N per (?:sq(?:uare)? )?m(?:\^?2)?\b"),
    ("lb/in2", r"(?:lbf?s?\s?/\s?in\^?2|psi)\b"),
    ("kPa", r"kPa\b|kilopascals?\b"),
    ("MPa", r"MPa\b|megapascals?\b"),
    ("Pa", r"Pa\b|pascals?\b"),
    ("cm2", r"(?:cm\^?2|sq(?:uare)? ?(?:cm|centimet(?:er|re)s?))\b"),
    ("mm2", r"(?:mm\^?2|sq(?:uare)? ?(?:mm|millimet(?:er|re)s?))\b"),
    ("in2", r"(?:in\^?2|sq(?:uare)? ?(?:in|inch(?:es)?))\b"),
    ("m2", r"(?:m\^2|sq(?:uare)? ?(?:m|met(?:er|re)s?))\b"),
    ("%BW", r"(?:%|percent|per cent)\s*(?:of\s+)?(?:(?:the|her|his|my)\s+)?(?:BW|bw|body[ -]?weight)\b"),
    ("%cm", r"(?:%|percent|per cent)\s*(?:BW)?[ \-*.]{0,3}cm\b"),
    ("kNm", r"kN[ \-*.]{0,3}m\b|kilonewton[ -]?met(?:er|re)s?\b"),
    ("kgcm", r"kg[ \-*.]{0,3}cm\b"),
    ("kgm", r"kg[ \-*.]{0,3}m\b(?!\s?/)"),
    ("Ncm", r"N[ \-*.]{0,3}cm\b|newton[ -]?centi?met(?:er|re)s?\b"),
    ("Nmm", r"N[ \-*]?mm\b"),
    ("Nm", r"N[ \-*.]{0,3}m\b|[Nn]ewton[ -]?met(?:er|re)s?\b|nm\b"),
    ("lbin", r"(?:lbf?s?[ \-*.]{1,3}in|in[ \-*.]{1,3}lbf?s?|lbin|inch[ \-]pounds?|pound[ \-]inch(?:es)?)\b"),
    ("lbcm", r"lbf?s?[ \-*.]{1,3}cm\b"),
    ("lbft", r"(?:lbf?s?[ \-*.]{1,3}ft|ft[ \-*.]{1,3}lbf?s?|lbft|foot[ \-]pounds?)\b"),
    ("kN", r"kN\b|kilonewtons?\b"),
    ("N", r"(?:N|[Nn]ewtons?)\b"),
    ("kg", r"kg\b|kgs\b|kilos?\b|kilograms?\b"),
    ("kgf", r"kgf\b"),
    ("cm", r"cms?\b|centimet(?:er|re)s?\b"),
    ("mm", r"mm\b|millimet(?:er|re)s?\b"),
    ("lb", r"(?:lbf?s?|pounds?)\b"),
    ("ft", r"(?:ft|feet|foot)\b"),
    ("in", r"(?:in|inch|inches)\b|\""),
    ("m", r"(?:m|met(?:er|re)s?)\b"),
    ("deg", r"(?:degrees?|degs?|grad|Grad|graden|grader|degrés?)\b|°"),
    ("rad", r"rad(?:ians?)?\b"),
    ("%", r"%|percent\b|per cent\b"),
    ("BW", r"BW\b"),
    ("gram", r"grams?\b"),
)
UNITS = tuple((name, re.compile(r"\s{0,2}(?:" + pattern + ")")) for name, pattern in _UNITS)
