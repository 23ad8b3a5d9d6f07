"""Takes the dress off a line of working: Markdown, LaTeX and signs of print become plain signs of mathematics. Loses
no word and no number.
"""

from __future__ import annotations

import re
from unicodedata import category
from unicodedata import name as name_of

from .limits import LONGEST_LINE

_GREEK = {
    "theta": "θ",
    "phi": "φ",
    "alpha": "α",
    "beta": "β",
    "gamma": "γ",
    "tau": "τ",
    "sigma": "σ",
    "mu": "μ",
    "Sigma": "Σ",
    "varphi": "φ",
    "psi": "ψ",
    "delta": "δ",
}
_COMMANDS = {
    "times": "*",
    "cdot": "*",
    "ast": "*",
    "div": "/",
    "degree": "°",
    "Rightarrow": "→",
    "implies": "→",
    "rightarrow": "→",
    "to": "→",
    "approx": "=",
    "simeq": "=",
    "sim": "=",
    "therefore": ";",
    "because": ";",
    "sum": " Σ",
    "quad": " ; ",
    "qquad": " ; ",
    "uparrow": " up ",
    "downarrow": " down ",
    "circ": "°",
    "leftarrow": " left ",
    "left": " ",
    "right": " ",
    "big": " ",
    "Big": " ",
    "displaystyle": " ",
    "nonumber": " ",
    "equiv": "=",
    "perp": "perp",
    "parallel": "par",
    "newline": " ; ",
}
_BULLET = re.compile(r"^\s*[-–•*+]\s+")
_LATEX = re.compile(r"\\[A-Za-z,;:!%$\\\[\](){]|\$")
_GROUPS = re.compile(
    r"\\(?:mathrm|text|textrm|textit|mathbf|operatorname|textbf|rm|mathit|boxed|hat|vec|bm|underline|overline|tag|mbox|emph|mathsf)\s*\{((?:[^{}]|\{[^{}]*\})*)\}"
)
_SUBSCRIPTS = {ord(a): b for a, b in zip("₀₁₂₃₄₅₆₇₈₉ₘₓₐₑₒₚₛₜₙᵢⱼₖᵧ", "0123456789mxaeopstnijky", strict=True)}
_SIGNS = {
    "−": "-",
    "–": "-",
    "—": " ; ",
    "×": "*",
    "·": "*",
    "⋅": "*",
    "∙": "*",
    "•": " ",
    "÷": "/",
    "√": " sqrt ",
    "²": "^2",
    "³": "^3",
    "½": ".5",
    "¼": ".25",
    "¾": ".75",
    "≈": "=",
    "~": "=",
    "≅": "=",
    "≃": "=",
    "⇒": " → ",
    "=>": " → ",
    "->": " → ",
    "⟹": " → ",
    "<-": " ; ",
    "←": " left ",
    "↑": " up ",
    "↓": " down ",
    "∴": " ; ",
    "∑": "Σ",
    "✓": " ",
    "[": "(",
    "]": ")",
    "**": "^",
    "==": "=",
    ":=": "=",
    "º": "°",
    "˚": "°",
    "⊥": "perp",
    "∥": "par",
    "`": "",
    "’": "'",
    "‘": "'",
    "′": "'",
    "“": '"',
    "”": '"',
    "⟶": " → ",
    "➔": " → ",
    "∕": "/",
    "⁻": "^-",
    "¹": "1",
    "⁰": "0",
    "∗": "*",
}
_UNITS = r"(?:k?N(?:[ ·*.]?c?m)?|kg|c?m|mm|lbf?|in|deg|°|%(?: ?BW)?|BW)"
_UNIT_IN_BRACKETS = re.compile(
    rf"(?<=[\d.])\s*\[\s*({_UNITS})\s*\]|(?<=\d)\s+\(\s*((?!m\b|in\b){_UNITS})\s*\)(?=\s*(?:$|[,;=]))"
)
_UNIT_BEHIND_NAME = re.compile(rf"(?<=[A-Za-z}}])\s*\[\s*{_UNITS}\s*\](?=\s*[=≈:])")
_NUMBERED = re.compile(r"(?<=\S)(?:\s{2,}|(?<=\.)\s)\(\d{1,2}\)\s*$")  # an equation's number, at the end of its line
_BY_NUMBER = re.compile(
    r"\b((?:from|by|in|into|using|with|equations?|eqs?\.?)\s+)\(\d{1,2}\)(?:\s*(?:and|,|&)\s*\(\d{1,2}\))*(?=\s*[,:;]|\s+[a-zA-Z])",
    re.I,
)
_TABLE = str.maketrans({a: b for a, b in _SIGNS.items() if len(a) == 1})


def decimal_comma(lines: list[str]) -> bool:
    """Whether a working writes its decimals with a comma."""
    text = "\n".join(lines).replace("{,}", ",")
    commas = len(re.findall(r"\d,\d", text)) - len(re.findall(r"\d,\d{3}(?!\d)", text)) * ("." in text)
    return commas > 0 and commas > len(re.findall(r"\d\.\d", text))


def strange(line: str) -> str:
    """The first sign of a line that nobody reads here, by its name: a control sign, a letter of another alphabet
    that looks like one of ours.
    """
    for sign in line:
        if sign.isascii() and (sign.isprintable() or sign == "\t"):
            continue
        kind, name = "Cn" if sign == "\ufffd" else category(sign), name_of(sign, "")
        if (
            kind in ("Cc", "Cf", "Co", "Cn", "Cs")
            and sign not in "\u200b\u200d\ufeff"
            or kind.startswith("L")
            and not name.startswith(
                (
                    "LATIN",
                    "GREEK",
                    "MICRO",
                    "MODIFIER",
                    "SUPERSCRIPT",
                    "FEMININE",
                    "MASCULINE",
                    "MATHEMATICAL",
                    "SCRIPT",
                    "OHM",
                    "KELVIN",
                    "ANGSTROM",
                )
            )
        ):
            return f"the sign {name.lower() or f'U+{ord(sign):04X}'}"
    return ""


def bulleted(lines: list[str]) -> bool:
    """Whether a working is a list: its lines begin with a dash or a star that is no sign of mathematics."""
    written = [each for each in lines if each.strip() and not each.lstrip().startswith("|")]
    marked = sum(bool(_BULLET.match(each)) for each in written)
    return marked >= 2 and marked == len(written) or marked >= 3 and 2 * marked >= len(written)


def undressed(line: str, bullets: bool = False) -> str:
    """A line without Markdown and LaTeX; in a list, without its bullet."""
    line = line[:LONGEST_LINE].replace("{,}", ",")
    line = re.sub(r"^\s*(?:#{1,6}|>)\s+", "", line)
    line = _BULLET.sub("", line) if bullets else re.sub(r"^\s*(?:•\s*|[-–*+]\s+(?=[^\d\s(.]))", "", line)
    line = re.sub(r"(?<!\w)__(?=\S)([^_]+?)(?<=\S)__(?!\w)", r"\1", line)
    for _ in range(3):
        line = re.sub(r"(?<![\w)*])\*\*(?=\S)([^*]+?)(?<=\S)\*\*(?![\w(*])", r"\1", line)
    line = re.sub(r"(?<![\w)*])\*(?=[A-Za-z])([^*\d=]+?)\*(?![\w(*])", r"\1", line)
    line = re.sub(r"~~[^~]*~~", " ", line)
    return _unlatexed(line) if _LATEX.search(line) else line


def _unlatexed(line: str) -> str:
    line = re.sub(r"\\(?:begin|end)\s*\{[^{}]*\}(?:\{[lcr|]*\})?|\\label\s*\{[^{}]*\}|\\hline", " ", line)
    line = re.sub(r"\^\s*(?:\{\s*\\(?:circ|degree)\s*\}|\\(?:circ|degree)(?![A-Za-z]))", "°", line)
    for _ in range(4):
        line = _GROUPS.sub(r" \1 ", line)
    line = re.sub(r"\\[dtc]?frac\s*(\d)\s*(\d)", r"((\1)/(\2))", line)
    for _ in range(12):
        line, found = re.subn(
            r"\\[dtc]?frac\s*\{((?:[^{}]|\{[^{}]*\})*)\}\s*\{((?:[^{}]|\{[^{}]*\})*)\}", r"((\1)/(\2))", line
        )
        line, more = re.subn(r"\\sqrt\s*\{((?:[^{}]|\{[^{}]*\})*)\}", r"sqrt(\1)", line)
        if not found + more:
            break
    line = re.sub(r"\\(sin|cos|tan|arcsin|arccos|arctan)(?![A-Za-z])", r" \1 ", line)
    line = line.replace("\\\\", " ; ").replace("\\%", "%").replace("\\$", " ").replace("$", " ").replace("&", " ")
    line = re.sub(r"\\(?:\[\d+pt\]|[,;:! \[\]()])", " ", line)
    line = re.sub(r"_\s*\{([^{}]*)\}", lambda found: "_" + re.sub(r"\W", "", found[1]), line)
    line = re.sub(r"\^\s*\{([^{}]*)\}", r"^(\1)", line)
    line = re.sub(r"\\([A-Za-z]+)", lambda found: _COMMANDS.get(found[1], _GREEK.get(found[1], f" {found[1]} ")), line)
    return re.sub(r" {2,}", " ", line.replace("{", "(").replace("}", ")").replace("\\", " "))


def plain(line: str, comma: bool) -> str:
    """A line in plain signs: one sign for each operation, a point for decimals, no thousands apart."""
    line = _UNIT_BEHIND_NAME.sub("", _UNIT_IN_BRACKETS.sub(lambda found: f" {found[1] or found[2]}", line))
    line = re.sub(r"(sin|cos|tan)\s*(?:⁻¹|\^\s*\{?\(?\s*[-−]\s*1\s*\)?\}?|-1(?=\s*\())", r"a\1", line)
    line = re.sub(
        r"(?i)\b(?:inv(?:erse)?|arc)[ -]*(sin|cos|tan)(?:e|gent)?\b", lambda found: "a" + found[1].lower(), line
    )
    line = _NUMBERED.sub("", _BY_NUMBER.sub(r"\1 ", line))
    line = re.sub("[\u20d0-\u20d7]", "", line).translate(_SUBSCRIPTS)  # arrows over letters
    for sign in ("=>", "->", "<-", "**", "==", ":="):
        line = line.replace(sign, _SIGNS[sign])
    line = line.translate(_TABLE).replace("…", " ")
    line = re.sub(r"\.{2,}", " ", line)
    line = re.sub(r"_\{([^{}]*)\}", lambda found: "_" + re.sub(r"\W", "", found[1]), line)
    if line.count("|") == 2:
        line = re.sub(r"(^|=|\W)\s*\|([^|]+)\|", r"\1 (\2)", line)
    line = line.replace("|", " ; ").replace("\t", " ; ")
    line = (
        re.sub(r"(?<=\d),(?=\d)|(?<![\d\w]),(?=\d)", ".", line)
        if comma
        else re.sub(r"(?<=\d),(?=\d{3}(?!\d))", "", line)
    )
    line = re.sub("(?<=\\d)[\u202f\u2009\u00a0](?=\\d{3}(?!\\d))", "", line)
    line = re.sub(r"(?<![\d.,] )(?<![\d.,\w])(\d{1,3}) (\d{3})(?![\d.]|\s*(?:cm|m|N|kg|lb|in)?\s+\d)", r"\1\2", line)
    line = re.sub(r"(?<![\w.])(\d[\d.]*)\s*[*x]\s*10\s*\^\s*\(?([+-]?\d{1,2})\)?(?!\d)", r"\1e\2", line)
    line = re.sub(r"\b(Sin|Cos|Tan|SIN|COS|TAN|Sqrt|SQRT)\b", lambda found: found[1].lower(), line)
    line = re.sub(r"(?<=[\d)])(\s*(?:kg|N|cm|m|lb|in|mm|Nm)?)\s+[xX]\s+(?=[\d.(])", r"\1 * ", line)
    line = re.sub(r"(?<=[a-zN\d)])x(?=(?:sin|cos|tan|\d|\.\d|\())", "*", line)
    line = re.sub(r"(?<![A-Za-z_])([A-Z])(?:\.|x)(?=\d|\.\d)", r"\1*", line)
    line = re.sub(r"(?<=\d)/(\d[\d.]*)\s+of\s+(?:the\s+)?(?=[\d.])", r"/\1 * ", line)
    line = re.sub(r"(\d)\s*(?:%|percent|per cent)\s*of\s+(?:the\s+)?(?=[\d.])", r"\1% * ", line)
    line = re.sub(r"N\s?/\s?cm\s*\^\s*\(?2\)?", "N/cm^2", line)
    return re.sub(r"(?i)^\W*(?:step|part|line|eq\.?|q)\s*\(?(?:\d{1,2}|[a-d])\b\)?[.:)]?(?![.\d])", " ", line)
