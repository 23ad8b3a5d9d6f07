"""Writes what the tests hold messages, notes, lessons, questions and commands against: after a wanted change, run it
and read what changed.

python tests/what_is_said.py
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from tempfile import TemporaryDirectory

HERE = Path(__file__).parent


def parts(file: str, mark: str) -> dict[str, str]:
    """What a file holds, by the name that stands behind the mark on each part's first line."""
    found = (HERE / file).read_text("utf-8").removeprefix(mark).split(f"\n{mark}") if (HERE / file).exists() else []
    return {name: text.strip() for name, _, text in (part.partition("\n") for part in found)}


def write(file: str, mark: str, said: Mapping[str, str]) -> None:
    (HERE / file).write_text("\n".join(f"{mark}{name}\n{text}\n" for name, text in said.items()), "utf-8")


def main() -> None:
    import test_boards
    import test_commands
    import test_messages
    import test_notes
    import test_export_told

    write("bad_inputs_said.txt", "## ", {case: test_messages.said_of(case) for case in test_messages.CASES})
    notes = {case: test_notes.note(case) for case in test_notes.NOTES}
    write("notes_said.txt", "## ", notes | {case: test_notes.fault(case) for case in test_notes.BAD_TABLES})
    write("lessons_told.txt", "== ", {name: test_boards.told(name) for name in test_boards.LESSONS})
    write("questions_told.txt", "== ", {name: test_export_told.told(name) for name in test_export_told.ASKED})
    commands = {}
    for command in test_commands.COMMANDS:
        with TemporaryDirectory() as folder:
            os.chdir(folder)
            commands[command] = test_commands.said(command, Path(folder))
    write("commands_said.txt", "$ explain ", commands)


if __name__ == "__main__":
    main()
