"""What a page says agrees with what it prints: the function with the angle as stated, sums as printed, the words with the answer."""
from __future__ import annotations

from pathlib import Path

from explain import work
from explain.join import Walkthrough

CASES = Path(__file__).parent / "cases" / "sentences"


def worked(name: str, **course: object) -> Walkthrough:
    return work(CASES / f"{name}.toml", course=course)


def lines_of(page: Walkthrough) -> list[str]:
    from explain.write.plain import plain

    return [plain(move.line.equation) for move in page.moves]


# ---------------------------------------------------------------------- at exactly 45 degrees
def test_an_angle_of_45_degrees_from_the_level_has_a_cosine_along_the_level_and_a_sine_upwards() -> None:
    written = lines_of(worked("jug-at-45"))
    assert ("d_B⊥ = d_B sin 45°" in written, "J_x − F_B cos 45° = 0" in written,
            "J_y + F_B sin 45° − W_F − W_J = 0" in written) == (True, True, True)


def test_a_bone_at_45_degrees_from_the_level_has_a_cosine_in_the_arm_of_a_weight() -> None:
    page = worked("knee-at-45")
    assert "d_A⊥ = d_A cos 45°" in lines_of(page)
    assert "with the angle from the level that is the cosine" in page.text(10000)


def test_a_bone_at_45_degrees_from_the_upright_has_a_sine_in_the_arm_of_a_weight() -> None:
    text = (CASES / "knee-at-45.toml").read_text(encoding="utf-8").replace("45 deg below right", "45 deg right of down")
    page = work(text)
    assert "d_A⊥ = d_A sin 45°" in lines_of(page)
    assert "with the angle from the upright that is the sine" in page.text(10000)


def test_a_pull_at_45_degrees_to_a_bone_at_45_degrees_keeps_the_angle_of_the_pull() -> None:
    text = (CASES / "knee-at-45.toml").read_text(encoding="utf-8").replace("20 deg from back", "45 deg from back")
    assert "d_Q⊥ = d_Q sin 45°" in lines_of(work(text))
