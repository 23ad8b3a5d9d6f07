"""The pages of a tutor as HTML: the list with what begins a new problem, and one problem with its file, fields and
figure. Works nothing; every text that comes in is escaped, what comes from a process is markup already.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from html import escape
from typing import Any, NamedTuple

from .pages import Entry, fault, page

HOME, WHERE = "/edit", "All problems"


class Sheet(NamedTuple):
    """A problem file on its page: its name in addresses, the text, the digest of what was loaded, and what a process
    tells of the text; what is said of saving, and, where somebody else changed the file, its text and digest now.
    """

    name: str
    text: str
    digest: str
    told: Mapping[str, Any]
    state: str = ""
    theirs: tuple[str, str] | None = None


def problems(entries: Iterable[Entry], like: Iterable[str], said: str = "", name: str = "") -> str:
    """The list of all problem files, and the form that begins a new one."""
    rows = []
    for each in entries:
        faulty = f'<div class="fault">{fault(each.fault)}</div>' if each.fault is not None else ""
        rows.append(f'<li><a href="{escape(each.address)}">{escape(each.title)}</a>{faulty}</li>')
    listed = f'<ul class="problems">{"".join(rows)}</ul>' if rows else "<p>There is no problem in this folder yet.</p>"
    options = "".join(f'<option value="{escape(each)}">{escape(each)}</option>' for each in like)
    body = f"""<h1>Problems to change</h1>
{listed}
<form class="new" method="post" action="{HOME}" autocomplete="off">
<h2>A new problem</h2>
<p id="new-how">It begins as a small one that works, to be changed into yours.</p>
<div class="row">
<div class="field"><label for="new-name">Its file</label><input type="text" id="new-name" name="name" required
 pattern="[a-z0-9][a-z0-9\\-]*" maxlength="56" value="{escape(name)}" spellcheck="false" autocapitalize="off"
 aria-describedby="new-help">
<p class="help" id="new-help">Small letters, digits and hyphens, such as milk-jug.</p></div>
<div class="field"><label for="new-like">Like</label><select id="new-like" name="like">{options}</select></div>
</div>
<p class="buttons"><button>Begin it</button></p>
<p id="state" role="status">{escape(said)}</p>
</form>"""
    return page("Problems to change", body, where="As students see them")


def problem(sheet: Sheet) -> str:
    """One problem to be changed. Without script the form redraws and saves; with it, all of the page follows."""
    told, address = sheet.told, f"{HOME}/{sheet.name}"
    title = str(told.get("title", sheet.name))
    drawn = "figure" in told
    said = str(told.get("said", ""))
    rows = min(max(sheet.text.count("\n") + 2, 14), 40)
    body = f"""<h1 id="title">{escape(title)}</h1>
<form id="edit" method="post" action="{escape(address)}" autocomplete="off" novalidate
 data-begin="{_data(told)}">
<input type="hidden" name="digest" id="digest" value="{escape(sheet.digest)}">
<div class="bench">
<section class="drawn" aria-label="The figure">
<div class="sheet" id="sheet"{"" if drawn else " hidden"}><div class="plate">
<div id="figure">{told.get("figure", "")}</div><div id="handles"></div>
</div></div>
<p id="stale" hidden>This is the last good figure: the file has changed since.</p>
<p id="said" role="status">{escape(said)}</p>
</section>
<div class="write">
<section id="turns" aria-labelledby="turns-head" hidden>
<h2 id="turns-head">Angles</h2>
<p class="help" id="turns-how">Turn a ring in the figure, by hand or with the arrow keys: a degree at a time, with Shift
a tenth. Or write the angle here.</p>
</section>
<section class="parts" aria-labelledby="parts-head" hidden id="parts">
<h2 id="parts-head">The parts</h2>
<fieldset id="fields" aria-labelledby="parts-head">{told.get("fields", "")}</fieldset>
</section>
<section aria-labelledby="file-head">
<h2 id="file-head"><label for="text">The file</label></h2>
<div id="fault" class="fault"{"" if "told" in told else " hidden"}>{told.get("told", "")}</div>
<textarea id="text" name="text" rows="{rows}" spellcheck="false" autocapitalize="off" autocorrect="off">
{escape(sheet.text)}</textarea>
<p class="buttons"><button name="do" value="save" id="save">Save</button>
<button name="do" value="redraw" id="redraw" class="second">Draw again</button>
<button type="button" id="undo" class="second" hidden>Take back</button>
<a class="view" href="/p/{escape(sheet.name)}">As a student sees it</a></p>
<p id="state" role="status">{escape(sheet.state)}</p>
{_conflict(sheet.theirs)}
</section>
</div>
</div>
</form>
<section id="worked" aria-label="The walkthrough">{told.get("html", "")}</section>"""
    return page(title, body, "edit.mjs", WHERE, HOME)


def _conflict(theirs: tuple[str, str] | None) -> str:
    text, digest = theirs or ("", "")
    gone = "" if digest or theirs is None else "<p>The file is no longer there.</p>"
    return f"""<section id="conflict" class="fault"{"" if theirs else " hidden"} aria-labelledby="conflict-head">
<h3 id="conflict-head">The file has changed on disk</h3>
<p>Somebody wrote it after it was loaded here. Nothing was overwritten: your text is above, theirs is below.</p>{gone}
<input type="hidden" name="theirs" id="their-digest" value="{escape(digest)}">
<textarea id="their-text" rows="12" readonly spellcheck="false" aria-label="The file on disk">
{escape(text)}</textarea>
<p class="buttons"><button name="do" value="over" id="over" class="second">Save mine over it</button>
<button name="do" value="take" id="take" class="second">Go on with theirs</button></p>
</section>"""


def _data(told: Mapping[str, Any]) -> str:
    """What the page's script begins with, for an attribute in double quotes."""
    data = {key: told[key] for key in ("handles", "size", "fault") if key in told}
    if "values" in told:
        data["ids"] = [*told["values"], *told["heads"]]
    return escape(json.dumps(data))
