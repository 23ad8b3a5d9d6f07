"""The command that makes personal variants; everything else is imported when it runs."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..errors import DONE, STOPPED, code_of, worst
from ..output import FORMATS

if TYPE_CHECKING:
    from ..jobs.pool import Trouble
    from ..vary.handouts import Handed, Order
    from ..vary.one_variant import Made
    from ..vary.class_list import Student

_FORMS = tuple(each for each in FORMATS if each != "json")
_TOLD = 10  # students in trouble that are named


@click.command()
@click.argument("problems", metavar="PROBLEM...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "-o",
    "out",
    required=True,
    type=click.Path(path_type=Path),
    help="The folder to write into; with several problems, one folder in it for each.",
)
@click.option("--count", type=click.IntRange(1, 100_000), help="How many variants.  [default: one for each name]")
@click.option(
    "--names", type=click.Path(path_type=Path), help="A class list, a .csv file with a column called name or student."
)
@click.option("--column", default="", help="The column of the class list that holds the names.")
@click.option(
    "--id",
    default="",
    help="A column of the class list that tells students apart for good, such as an email: numbers are drawn by it "
    "in place of the name.",
)
@click.option(
    "--seed", type=click.IntRange(0, 2**63), default=0, show_default=True, help="The same seed gives the same sheets."
)
@click.option(
    "--as", "form", type=click.Choice(_FORMS), default="markdown", show_default=True, help="The format of the sheets."
)
@click.option(
    "--keys",
    type=click.Choice(("table", "pages")),
    default="table",
    show_default=True,
    help="The key: a table of answers, or each student's walkthrough as well.",
)
@click.option(
    "--course", type=click.Path(path_type=Path), help="A course file that goes before the one a problem names."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
@click.option(
    "--jobs", type=click.IntRange(0, 256), default=0, help="How many processes work.  [default: one for each core]"
)
@click.option(
    "--cluster", default="", help="The address of a Dask scheduler, or local: the work goes out to its workers."
)
@click.option("--replace", is_flag=True, help="Give up the variants of another run that the folder holds.")
def vary(
    problems: tuple[Path, ...],
    out: Path,
    count: int | None,
    names: Path | None,
    column: str,
    id: str,
    seed: int,
    form: str,
    keys: str,
    course: Path | None,
    root: Path | None,
    jobs: int,
    cluster: str,
    replace: bool,
) -> None:
    """Make personal variants of each PROBLEM with a [vary]: a sheet for each student, and a key.

    Numbers are drawn by seed and name: a class list may grow, shrink and be sorted, and every student keeps the same.
    Stopped with Ctrl-C, the same command goes on where it stopped.
    """
    from ..input import real_root
    from ..problem.reader import course_keys
    from ..vary.handouts import Order

    students, real = _students(count, names, column, id), real_root(root)
    overlay = course_keys(course) if course else None
    sys.exit(
        _all(
            [
                Order(file, folder, students, seed, form, keys == "pages", jobs, cluster, overlay, replace, real)
                for file, folder in zip(problems, _folders(problems, out), strict=True)
            ]
        )
    )


def _students(count: int | None, names: Path | None, column: str, id: str) -> tuple[Student, ...]:
    """Those of the class list, the first `count` of them; without a list, so many numbers. Raises Fault."""
    from ..errors import Fault
    from ..vary.class_list import namesakes, numbered, read_roll

    if names is None:
        if count is None:
            raise Fault(
                found="neither --count nor --names",
                expected="how many variants, or a class list",
                example="--count 120",
            )
        if column or id:
            raise Fault(
                found=f"{'--column' if column else '--id'} without --names",
                expected="a class list that has the column",
                example="--names class.csv --column name",
            )
        return numbered(count)
    students = read_roll(names, column, id)
    _tell_namesakes(namesakes(students), names)
    if count is not None and count > len(students):
        raise Fault(
            file=str(names),
            found=f"{len(students)} names, and --count {count}",
            expected=f"at most {len(students)} variants",
            example=f"--count {len(students)}",
        )
    return students[:count]


def _tell_namesakes(alike: Sequence[str], names: Path) -> None:
    if alike:
        from ..errors import legible, shown

        told = ", ".join(shown(each) for each in alike[:_TOLD]) + (", and others" if len(alike) > _TOLD else "")
        click.echo(
            legible(
                f"explain: {names} has names that come more than once; they are told apart in the order of the list: "
                f"{told}. With a column that tells them apart for good (--id email) each keeps the same numbers when "
                "the list changes."
            ),
            err=True,
        )


def _folders(problems: Sequence[Path], out: Path) -> list[Path]:
    from ..errors import Fault

    if len(problems) == 1:
        return [out]
    folders = [out / file.stem for file in problems]
    twice = [str(file) for file, folder in zip(problems, folders, strict=True) if folders.count(folder) > 1]
    if twice:
        raise Fault(
            found=f"{' and '.join(twice)}, which would be written to one folder",
            expected="problem files with different names",
            example="-o monday",
        )
    return folders


def _all(orders: Sequence[Order]) -> int:
    """One problem after another; a bad one does not stop the rest."""
    from .main import _tell
    from ..vary.handouts import hand_out

    codes = [DONE]
    for order in orders:
        try:
            handed = hand_out(order, _watched)
        except KeyboardInterrupt:
            click.echo("explain: stopped; what was made is kept, and the same command goes on from there.", err=True)
            return STOPPED
        except Exception as error:
            _tell(error, order.file)
            codes.append(code_of(error))
            continue
        _told(order, handed)
        codes += [trouble.code for _, trouble in handed.troubles]
    return worst(codes)


def _watched(results: Iterable[Made | Trouble], length: int) -> Iterable[Made | Trouble]:
    from ..jobs.progress_bar import watched

    return watched(results, length, "Making variants")


def _told(order: Order, handed: Handed) -> None:
    from ..errors import legible

    count = handed.fresh + handed.kept
    lines = [
        f"{order.file.name}: {count} variant{'s' * (count != 1)} in {order.folder}: {handed.fresh} made, "
        f"{handed.kept} there already."
    ]
    lines += [f"Not made, {student.name}: {trouble.message}" for student, trouble in handed.troubles[:_TOLD]]
    lines += [f"and {len(handed.troubles) - _TOLD} more."] if len(handed.troubles) > _TOLD else []
    if handed.gone:
        names = ", ".join(handed.gone[:_TOLD]) + (" and others" if len(handed.gone) > _TOLD else "")
        lines.append(f"No longer in the list, and not in the key; their files stay where they are: {names}.")
    for line in "\n".join(lines).split("\n"):
        click.echo(legible(line), err=True)
