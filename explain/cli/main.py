"""The command line: translates files, options and exceptions; everything else is imported when a command needs it."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

import click

from ..errors import A_PERSON, BROKEN, DONE, code_of, worst
from ..output import FORMATS

if TYPE_CHECKING:
    from ..api import Walkthrough
    from ..document.passage import Page

T = TypeVar("T")
_HELP_WIDTH = 100  # characters of what is said of a command in the list of all
CAUTION = (
    "A teaching model: not for treatment, training load, lifting or equipment decisions; local rules and "
    "licensed practice decide."
)
ELSEWHERE = {  # commands in modules of their own, with what --help says of them, so that it need not import them
    "desk": "Serve the problems of FOLDER as pages in the browser, from this machine.",
    "export": "Put problem FILES into a package of questions for a learning platform. It holds the right answers.",
    "lesson": "Make a lesson of a PROBLEM or a series file: pages for a board, one idea a page.",
    "manual": "Make one book of chapters and problems, as the file BOOK says.",
    "mark": "Judge each WORKING of a PROBLEM, line by line.",
    "new": "Write a small commented problem file NAME.toml that works at once.",
    "series": "Work a series FILE: a base problem, and steps that each change one thing.",
    "sheet": "Make a sheet of each PROBLEM to be worked on: the problem alone, with room for diagram and working.",
    "tally": "Tell what a class got wrong in a PROBLEM.",
    "vary": "Make personal variants of each PROBLEM with a [vary].",
}


class Desk(click.Group):
    """The commands, with exceptions turned into messages and exit codes."""

    def list_commands(self, context: click.Context) -> list[str]:
        return sorted((*super().list_commands(context), *ELSEWHERE))

    def get_command(self, context: click.Context, name: str) -> click.Command | None:
        if name not in ELSEWHERE:
            return super().get_command(context, name)
        from importlib import import_module

        command: click.Command = getattr(import_module(f".{name}", __package__), name)
        return command

    def format_commands(self, context: click.Context, formatter: click.HelpFormatter) -> None:
        """The list of commands, without importing those that lie elsewhere."""
        here = {name: each.get_short_help_str(_HELP_WIDTH) for name, each in self.commands.items()}
        with formatter.section("Commands"):
            formatter.write_dl(sorted((here | ELSEWHERE).items()))

    def main(self, *args: Any, **extra: Any) -> Any:
        try:
            return super().main(*args, **extra)
        except Exception as error:
            known = _no_room(error)
            _tell(known, None)
            sys.exit(code_of(known))


def _no_room(error: Exception) -> Exception:
    """A full disk, wherever it was met, is no fault of the program."""
    from errno import EDQUOT, EFBIG, ENOSPC

    from ..output import give_up_output, no_room

    if not isinstance(error, OSError) or error.errno not in (EDQUOT, EFBIG, ENOSPC):
        return error
    give_up_output()
    return no_room(str(error.filename or "standard output"), error)


def _tell(error: Exception, file: Path | None) -> None:
    """One message on standard error; what is no fault of the input is called by its name."""
    from ..errors import legible

    known = hasattr(error, "exit_code") and error.exit_code != BROKEN
    said = (
        str(error)
        if known
        else f"a fault of the program itself: {type(error).__name__}: {error}\nPlease report it with the problem file."
    )
    place = "" if file is None or legible(str(file)) in legible(said) else f"{file}: "
    click.echo("explain: " + "\n".join(legible(line) for line in f"{place}{said}".split("\n")), err=True)


@click.group(
    cls=Desk, epilog=CAUTION, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 110}
)
@click.version_option(package_name="worked-moments", prog_name="explain")
def main() -> None:
    """Work statics problems of the body, line by certified line."""


@main.command()
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "-o",
    "out",
    type=click.Path(path_type=Path),
    help="Where to write: a file (its suffix says the format) or a folder, one file a problem.",
)
@click.option("--as", "form", type=click.Choice(FORMATS), help="The format, where no suffix says it.  [default: text]")
@click.option(
    "--course", type=click.Path(path_type=Path), help="A course file that goes before the one a problem names."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
@click.option("--watch", is_flag=True, help="Draw the page again whenever a file is saved, until Ctrl-C; needs -o.")
def work(
    files: tuple[Path, ...], out: Path | None, form: str | None, course: Path | None, root: Path | None, watch: bool
) -> None:
    """Work problem FILES through and write the walkthroughs."""
    folder, form = target(files, out, form)
    if watch:
        _watch(files, Place(folder, out, form), course, root)
        sys.exit(DONE)
    session = Session(course, root)
    worked = session.all(files)
    _write(worked, folder, out, form)
    session.summary(len(files))
    sys.exit(session.code)


@main.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("-o", "out", type=click.Path(path_type=Path), help="Where to write the SVG.  [default: standard output]")
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
def draw(file: Path, out: Path | None, root: Path | None) -> None:
    """Draw the free-body diagram of a problem FILE as SVG."""
    from ..output import drawing_only

    _not_onto((file,), [out] if out else [])
    if out is not None:
        drawing_only(out)
    session = Session(None, root)
    worked = session.all((file,))
    if worked:
        _put(out, worked[0][1].figure().encode())
    sys.exit(session.code)


@main.command()
@click.argument("which", type=click.Choice(("problem", "course", "series", "book")), default="problem")
def schema(which: str) -> None:
    """Print the JSON Schema of problem, course, series or book files, for editors."""
    from ..output import put_out
    from ..problem.schema import schema as schema_text

    put_out(schema_text(which).encode())


class Place(NamedTuple):
    """Where pages go: a folder, or else a file, or else standard output."""

    folder: Path | None
    out: Path | None
    form: str

    def holds(self, worked: int, of: int) -> bool:
        """Whether what could be worked is enough to write: of one file for several, all of them."""
        return worked == of or bool(worked and self.folder)


def _watch(files: Sequence[Path], place: Place, course: Path | None, root: Path | None) -> None:
    """Write the pages now and at every save; a fault leaves the last good page. Ends with Ctrl-C."""
    from ..errors import Fault
    from ..problem.named_files import named_files
    from .watch import saves, stamp

    if place.out is None:
        raise Fault(
            found="--watch without a page", expected="a file or folder to write to", example="--watch -o page.html"
        )
    behind: dict[Path, tuple[Path, ...]] = {}

    def watched() -> tuple[Path, ...]:
        for file in files:
            found = named_files(file)
            behind[file] = behind.get(file, ()) if found is None else found
        named = (each for file in files for each in behind[file])
        return tuple(dict.fromkeys((*files, *named, *([course] if course else []))))

    try:
        _say(f"watching {', '.join(map(str, watched()))}; Ctrl-C ends it.")
        before = {file: stamp(file) for file in watched()}  # a save while the first page is drawn is one too
        _draw(files, place, course, root)
        for saved in saves(watched, before=before):
            _say(f"{', '.join(map(str, saved))} saved.")
            _draw(files, place, course, root)
    except KeyboardInterrupt:
        _say("no longer watching.")


def _draw(files: Sequence[Path], place: Place, course: Path | None, root: Path | None) -> None:
    """Write the pages, or say why they stay as they are."""
    from ..errors import code_of as code

    try:
        session = Session(course, root)
        worked = session.all(files)
        if place.holds(len(worked), len(files)):
            _write(worked, *place)
            _say(f"{place.out} is drawn.")
    except Exception as error:
        if code(error) == BROKEN:
            raise
        _tell(error, None)
        worked = []
    if len(worked) < len(files):
        _say(f"{place.out} stays as it was drawn last; save a file to try again.")


def _say(words: str) -> None:
    from ..errors import legible

    click.echo(f"explain: {legible(words)}", err=True)


class Session:
    """Several files worked one after another; a bad one is reported and passed over."""

    def __init__(self, course: Path | None, root: Path | None) -> None:
        from ..input import real_root
        from ..problem.reader import course_keys

        self.root = real_root(root) or None
        self.course, self.code = course_keys(course) if course else None, DONE
        self.failed: list[Path] = []
        self.asked_for: list[Path] = []

    def all(self, files: Sequence[Path]) -> list[tuple[Path, Walkthrough]]:
        from ..errors import legible

        if len(files) < 2:
            return [each for file in files for each in self.one(file)]
        done: list[tuple[Path, Walkthrough]] = []
        with click.progressbar(
            files, label="Working", file=sys.stderr, item_show_func=lambda file: legible(file.name) if file else ""
        ) as bar:
            for file in bar:
                done += self.one(file)
        return done

    def one(self, file: Path) -> list[tuple[Path, Walkthrough]]:
        """The walkthrough of a file, or nothing where it has none: the reason goes to standard error."""
        from ..api import work as work_problem

        try:
            walkthrough = work_problem(file, course=self.course, root=self.root)
            _ = walkthrough.page
        except Exception as error:
            _tell(error, file)
            self.code = worst((self.code, code_of(error)))
            self.failed.append(file)
            return []
        if walkthrough.needs_a_person:
            self.code = worst((self.code, A_PERSON))
            self.asked_for.append(file)
        return [(file, walkthrough)]

    def made(self, file: Path, make: Callable[[], T]) -> list[tuple[Path, T]]:
        """What is made of a worked problem, or nothing where it cannot be: the reason goes to standard error."""
        try:
            return [(file, make())]
        except Exception as error:
            _tell(error, file)
            self.code = worst((self.code, code_of(error)))
            self.failed.append(file)
            return []

    def summary(self, count: int) -> None:
        from ..errors import legible

        if count < 2:
            return
        said = [f"{count - len(self.failed)} of {count} worked"]
        if self.asked_for:
            said.append(f"a check fails in {', '.join(map(str, self.asked_for))}")
        if self.failed:
            said.append(f"not worked: {', '.join(map(str, self.failed))}")
        click.echo(legible("; ".join(said) + "."), err=True)


def target(
    files: Sequence[Path], out: Path | None, form: str | None, forms: Sequence[str] = FORMATS
) -> tuple[Path | None, str]:
    """The folder to write into, or None for one file, and the format. Raises Fault where that cannot be."""
    from ..errors import Fault
    from ..output import SUFFIXES, form_of

    if out is None:
        if form == "pdf" and sys.stdout.isatty():
            raise Fault(found="PDF for a terminal", expected="a file to write it to", example="-o page.pdf")
        return None, form or "text"
    if not os.path.isdir(out) and (out.suffix or len(files) < 2):
        _not_onto(files, [out])
        form = form or form_of(out)
        if form not in forms:
            suffixes = ", ".join(SUFFIXES[each] for each in forms)
            raise Fault(
                str(out), found=f'the suffix "{out.suffix}"', expected=f"one of {suffixes}", example="-o page.pdf"
            )
        return None, form
    form = form or "markdown"
    targets = [out / (file.stem + SUFFIXES[form]) for file in files]
    twice = [file for file, target in zip(files, targets, strict=True) if targets.count(target) > 1]
    if twice:
        raise Fault(
            found=f"{' and '.join(map(str, twice))}, which would be written to one file",
            expected="problem files with different names",
            example="-o monday",
        )
    _not_onto(files, targets)
    return out, form


def _not_onto(files: Sequence[Path], targets: Sequence[Path]) -> None:
    """Refuse to write a page over a problem file."""
    from ..errors import Fault
    from ..output import same

    for file in files:
        for target in targets:
            if same(target, file):
                raise Fault(
                    file=str(target),
                    found="the problem file itself as the place to write to",
                    expected="another name",
                    example="-o page.pdf",
                )


def _write(worked: Sequence[tuple[Path, Walkthrough]], folder: Path | None, out: Path | None, form: str) -> None:
    from ..output import SUFFIXES, make_folder

    if folder is not None:
        make_folder(folder)
        for file, walkthrough in worked:
            _put(folder / (file.stem + SUFFIXES[form]), walkthrough.written(form))
        return
    if worked:
        _put(out, _together([each for _, each in worked], form))


def write_pages(made: Sequence[tuple[Path, Sequence[Page]]], folder: Path | None, out: Path | None, form: str) -> None:
    """Pages of problems into one file, or into a folder with a file for each problem."""
    from ..output import SUFFIXES, make_folder
    from ..write.formats import written

    if folder is not None:
        make_folder(folder)
        for file, pages in made:
            _put(folder / (file.stem + SUFFIXES[form]), written(pages, form))
    elif made:
        _put(out, written([page for _, pages in made for page in pages], form, f"{len(made)} sheets"))


def _together(worked: Sequence[Walkthrough], form: str) -> bytes:
    """Several walkthroughs in one file."""
    if len(worked) == 1:
        return worked[0].written(form)
    if form in ("pdf", "html", "latex"):
        from ..write.formats import written

        return written([each.page for each in worked], form, f"{len(worked)} worked problems")
    gap = {"markdown": b"\n---\n\n", "text": b"\n\n", "json": b""}[form]
    return gap.join(each.written(form).rstrip(b"\n") + b"\n" for each in worked)


def _put(out: Path | None, content: bytes) -> None:
    from ..output import put_out, put_whole

    if out is not None:
        put_whole(out, content)
    else:
        put_out(content)
