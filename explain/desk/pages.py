"""The pages of the desk as HTML around what is made elsewhere. Works nothing; every text that comes in is escaped."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from hashlib import sha256
from html import escape
from importlib.resources import files
from typing import Any, NamedTuple

HINTS = 3
KINDS = {".css": "text/css; charset=utf-8", ".mjs": "text/javascript; charset=utf-8"}


class Asset(NamedTuple):
    """A file of our own that a page fetches: its name with a digest of what it holds, and that."""

    address: str
    content: bytes
    kind: str


def _asset(name: str, content: bytes) -> Asset:
    digest = sha256(content).hexdigest()[:16]
    return Asset(f"/asset/{digest}/{name}", content, KINDS[name[name.rindex(".") :]])


def _assets() -> Mapping[str, Asset]:
    here, written = files(__package__) / "static", files("explain.write.html") / "screen.css"
    style = b"".join(each.read_bytes() for each in (written, here / "desk.css", here / "edit.css"))
    scripts = (each for each in here.iterdir() if each.name.endswith(".mjs"))
    return {
        "desk.css": _asset("desk.css", style),
        **{each.name: _asset(each.name, each.read_bytes()) for each in scripts},
    }


ASSETS = _assets()
BY_ADDRESS = {each.address: each for each in ASSETS.values()}


def page(title: str, body: str, script: str = "", where: str = "", home: str = "/") -> str:
    """A whole document; `body` is markup. `where` is what the way back says, "" for none."""
    module = f'<script type="module" src="{ASSETS[script].address}"></script>' if script else ""
    back = f'<nav aria-label="The desk"><a href="{escape(home)}">{escape(where)}</a></nav>' if where else ""
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        '<meta name="color-scheme" content="light dark">\n'
        f'<title>{escape(title)}</title>\n<link rel="icon" href="data:,">\n'
        f'<link rel="stylesheet" href="{ASSETS["desk.css"].address}">\n{module}\n</head>\n<body class="desk">\n'
        f'<a class="skip" href="#main">Skip to the page</a>\n{back}\n<main id="main" tabindex="-1">\n{body}\n'
        "</main>\n</body>\n</html>\n"
    )


def sorry(title: str, says: str, home: str = "/") -> str:
    """A page that says what went wrong, and the way on."""
    return page(title, f"<h1>{escape(title)}</h1>\n<p>{escape(says)}</p>", where="All problems", home=home)


# ---------------------------------------------------------------------- the list
class Entry(NamedTuple):
    """A problem in the list: its address, title, what it is about, and its fault where it has one."""

    address: str
    title: str
    about: str = ""
    fault: Mapping[str, Any] | None = None


def problems(entries: Iterable[Entry], edit: bool = False) -> str:
    """The list of all problems. With `edit` each can be opened for change, and a new one begun."""
    rows = []
    for each in entries:
        title = escape(each.title)
        if each.fault is not None:
            said = f'<div class="fault">{fault(each.fault)}</div>'
            shown = f'<a href="{escape(each.address)}">{title}</a>' if edit else f"<span>{title}</span>"
            rows.append(f"<li>{shown}{said}</li>")
        else:
            about = f"<p>{escape(each.about)}</p>" if each.about else ""
            rows.append(f'<li><a href="{escape(each.address)}">{title}</a>{about}</li>')
    empty = (
        "<p>There is no problem in this folder yet. <code>explain new NAME</code> writes a small one that works at "
        "once; put it, or a problem file of your own (a name that ends in .toml), into the folder, and load this "
        "page again.</p>"
    )
    listed = f'<ul class="problems">{"".join(rows)}</ul>' if rows else empty
    return page("Problems", f"<h1>Problems</h1>\n{listed}")


def fault(of: Mapping[str, Any]) -> str:
    """A fault of a problem file as elements: where, what was found, what is expected, an example."""
    place = ": ".join(filter(None, (f"Line {of['line']}" if "line" in of else "", str(of.get("key", "")))))
    lines = [
        f"{place}: found {of.get('found', '')}." if place else f"Found {of.get('found', '')}.",
        f"Expected {of['expected']}." if "expected" in of else "",
        str(of.get("advice", "")),
    ]
    example = f"<p>Write, for example: <code>{escape(str(of['example']))}</code></p>" if "example" in of else ""
    return "".join(f"<p>{escape(each)}</p>" for each in lines if each) + example


# ---------------------------------------------------------------------- a problem and a working of it
class Working(NamedTuple):
    """A working as it stands on the page: what was typed, what is said of it, the line and the hints that go with
    that, and the lines judged, as elements.
    """

    text: str = ""
    said: str = ""
    state: str = ""
    line: int = 0
    hints: int = 0
    html: str = ""


NOTHING = Working()


def problem(address: str, title: str, html: str, caution: str, working: Working = NOTHING, keeps: str = "") -> str:
    """The page of a problem. It works without script: the form is posted, and the page comes back judged. `keeps` says
    what the desk keeps of a working.
    """
    kept = (
        f'<p class="caution">{escape(keeps)}</p>\n<p id="kept" hidden>Your lines are kept under the code '
        '<code id="kept-code"></code>. <button type="button" class="second" id="forget">Delete them</button></p>'
        if keeps
        else ""
    )
    hidden = "" if working.state == "wrong" and working.hints < HINTS else " hidden"
    body = f"""<h1>{escape(title)}</h1>
<section class="statement" aria-label="The problem">
{html}
</section>
<form id="working" method="post" action="{escape(address)}/working" autocomplete="off">
<h2><label for="lines">Your working</label></h2>
<p id="how">One step a line, as you would write it on paper: <code>W = m g</code>, then its numbers on the next line. A
line is judged when you go on to the next. Other ways to the same end are just as right.</p>
<div class="beside">
<textarea id="lines" name="working" rows="9" spellcheck="false" autocapitalize="off" autocorrect="off"
 aria-describedby="how">
{escape(working.text)}</textarea>
<section class="echo" aria-labelledby="echo-head"><h3 id="echo-head">How it is read</h3><ol id="echo"></ol></section>
</div>
<p class="buttons"><button name="hints" value="0" id="judge">Judge my lines</button>
<button name="hints" value="{working.hints + 1}" id="hint"{hidden}>{hint_label(working.hints)}</button>
<label class="keep" hidden><input type="checkbox" id="keep"> Keep on this device</label></p>
<input type="hidden" name="for" id="for" value="{working.line}">
<p id="said" role="status" data-state="{escape(working.state)}">{escape(working.said)}</p>
<p id="state" role="status"></p>
</form>
{kept}
<section id="judged" aria-label="Your lines, judged">{working.html}</section>
<p class="caution">{caution}</p>"""
    return page(title, body, "working.mjs", "All problems")


def code_wanted(address: str, title: str, unknown: bool) -> str:
    """The page that asks for the code of a personal variant."""
    said = "There is no such code here: are all its letters right?" if unknown else ""
    body = f"""<h1>{escape(title)}</h1>
<p>Everyone has numbers of their own for this problem. Your code opens yours.</p>
<form method="get" action="{escape(address)}" class="code">
<p><label for="code">Your code</label><br>
<input type="text" id="code" name="code" required maxlength="16" autocomplete="off" autocapitalize="off"
 spellcheck="false"></p>
<p role="status">{said}</p>
<p class="buttons"><button>Open my problem</button></p>
</form>"""
    return page(title, body, where="All problems")


def text(words: str) -> str:
    """Plain text as HTML text, also fit for an attribute in double quotes."""
    return escape(words)


def hint_label(hints: int) -> str:
    return "One hint more" if hints else "A hint"
