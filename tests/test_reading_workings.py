"""Lines as students type them, each with how it must be read back."""

from __future__ import annotations

import pytest

from explain.marking.reading import Chain, Words, read_back, read_line, vocabulary_of

VOCABULARY = vocabulary_of(
    {
        "flexors.force": ("F_m", "F", "F_flexors", "F_biceps", "flexors"),
        "can.weight": ("W_c", "Fg_can"),
        "forearm.weight": ("W_f", "Fg_forearm"),
        "bag.weight": ("Fg_bag", "W_bag"),
        "foot.weight": ("Fg_foot", "W_foot"),
        "rock.moment": ("tau_rock",),
        "arm.moment": ("tau_arm",),
        "flexors.moment": ("T_flexors", "tau_biceps"),
        "can.moment": ("T_can",),
        "total.moment": ("T", "M"),
        "g": ("g",),
        "reaction": ("R",),
        "reaction.right": ("R_x",),
        "reaction.up": ("R_y",),
        "angle reaction": ("theta",),
    }
)

LINES = (
    ("W01", "pivot at elbow, ΣT = 0", "pivot at elbow | ΣT = 0"),
    ("W01", "T_can = 3.0(0.33) = 0.99 N*m", "T_can = 3.0 × 0.33 = 0.99 N·m"),
    ("W01", "T_flex = F(0.040)", "T_flex = F × 0.040"),
    ("W01", "F = 0.99/0.040 = 24.75", "F = 0.99 / 0.040 = 24.75"),
    ("W01", "F ≈ 24.8 N upward", "F ≈ 24.8 N (upward)"),
    ("W02", "W = 3.0*9.81 = 29.43 N", "W = 3.0 × 9.81 = 29.43 N"),
    ("W02", "Sum M about elbow = 0 (ccw +)", "ΣM (about elbow) = 0 (ccw +)"),
    ("W02", "Fm*4.0 - 29.43*33 = 0", "Fm × 4.0 − 29.43 × 33 = 0"),
    ("W02", "Fm = 971.2/4.0 = 242.8 N", "Fm = 971.2 / 4.0 = 242.8 N"),
    ("W03", "Wc = 29.4 N, Wf = 15.7 N", "Wc = 29.4 N | Wf = 15.7 N"),
    (
        "W03",
        "F x 4 = 29.4 x 33 + 15.7 x 15 = 970.2 + 235.5 = 1205.7",
        "F × 4 = 29.4 × 33 + 15.7 × 15 = 970.2 + 235.5 = 1205.7",
    ),
    ("W03", "F = 301 N", "F = 301 N"),
    ("W03", "up forces = down forces", "up forces = down forces"),
    ("W03", "R = 29.4 + 15.7 = 45.1 N, up", "R = 29.4 + 15.7 = 45.1 N (up)"),
    ("W05", "shank is 40° from vertical", "shank is 40° from vertical"),
    (
        "W05",
        "cuff: 6.0 × 9.81 = 58.86 N; shank: 4.4 × 9.81 = 43.16 N",
        "cuff: 6.0 × 9.81 = 58.86 N | shank: 4.4 × 9.81 = 43.16 N",
    ),
    ("W05", "level distance of cuff = 36 cos 40° = 27.58 cm", "level distance of cuff: 36 × cos(40°) = 27.58 cm"),
    ("W05", "level distance of shank = 23 cos 40° = 17.62 cm", "level distance of shank: 23 × cos(40°) = 17.62 cm"),
    ("W05", "F · 6.5 sin 22° = 58.86 · 27.58 + 43.16 · 17.62", "F × 6.5 × sin(22°) = 58.86 × 27.58 + 43.16 × 17.62"),
    ("W05", "2.435 F = 1623.4 + 760.5 = 2383.9", "2.435 × F = 1623.4 + 760.5 = 2383.9"),
    ("W05", "F = 979 N", "F = 979 N"),
    ("W06", "τ_rock = (6)(9.81)(.35) = 20.60 N·m", "τ_rock = 6 × 9.81 × 0.35 = 20.60 N·m"),
    ("W06", "τ_arm = (1.7)(9.81)(.16) = 2.668 N·m", "τ_arm = 1.7 × 9.81 × 0.16 = 2.668 N·m"),
    ("W06", "τ_biceps = F(.045)", "τ_biceps = F × 0.045"),
    ("W06", ".045F = 20.60 + 2.668", "0.045 × F = 20.60 + 2.668"),
    ("W06", "F = 517.1 N", "F = 517.1 N"),
    ("W07", "Fm = 550.3 N (part a)", "Fm = 550.3 N (part a)"),
    ("W07", "Rx = 550.3 cos70 = 188.2 N", "Rx = 550.3 × cos(70°) = 188.2 N"),
    ("W07", "Ry = 550.3 sin70 - 75.5 = 441.6 N (down)", "Ry = 550.3 × sin(70°) − 75.5 = 441.6 N (down)"),
    ("W07", "R = √(188.2² + 441.6²) = 480 N", "R = √(188.2² + 441.6²) = 480 N"),
    ("W07", "θ = tan⁻¹(188.2/441.6) = 23.1° below horizontal", "θ = atan(188.2 / 441.6) = 23.1° (below horizontal)"),
    ("W12", "Fg(bag) = 7.5 lb × 32.2 ft/s² = 241.5 lb", "Fg(bag) = 7.5 lb × 32.2 ft/s² = 241.5 lb"),
    ("W12", "Fg(foot) = 2.3 × 32.2 = 74.06 lb", "Fg(foot) = 2.3 × 32.2 = 74.06 lb"),
    ("W12", "T = 241.5(6.2) + 74.06(2.1) = 1652.8 lb·in", "T = 241.5 × 6.2 + 74.06 × 2.1 = 1652.8 lb·in"),
    ("W12", "Fm = 1652.8/1.5 = 1102 lb", "Fm = 1652.8 / 1.5 = 1102 lb"),
    ("C01", "F/g × 4.0 = 3.0 × 33", "(F / g) × 4.0 = 3.0 × 33"),
    ("C01", "F/g = 24.75 kg", "F / g = 24.75 kg"),
    ("C01", "F = 24.75 × 9.81 = 242.8 N", "F = 24.75 × 9.81 = 242.8 N"),
    ("C02", "moments about where the muscle pulls:", "moments about where the muscle pulls:"),
    ("C02", "R × 4.0 = 29.43 × (33 − 4.0) + 15.70 × (15 − 4.0)", "R × 4.0 = 29.43 × (33 − 4.0) + 15.70 × (15 − 4.0)"),
    ("C02", "R = 256.5 N, down", "R = 256.5 N (down)"),
    ("C02", "F = R + 29.43 + 15.70 = 301.6 N", "F = R + 29.43 + 15.70 = 301.6 N"),
    ("C04", "V = vertical part of the tendon pull", "V = vertical part of the tendon pull"),
    ("C04", "4.5 V = 58.86*35 + 16.68*16 = 2327", "4.5 × V = 58.86 × 35 + 16.68 × 16 = 2327"),
    ("C04", "V = 517.1", "V = 517.1"),
    (
        "C04",
        "F = V / cos20 = 550.3 N   (70° to the bone is 20° from vertical)",
        "F = V / cos(20°) = 550.3 N (70° to the bone is 20° from vertical)",
    ),
    (
        "C04",
        "H = V tan20 = 188.2 N, joint pushes that much toward the hand",
        "H = V × tan(20°) = 188.2 N (joint pushes that much toward the hand)",
    ),
    ("C04", "down: 517.1 - 75.54 = 441.6 N", "down: 517.1 − 75.54 = 441.6 N"),
    ("C12", "3 x 9.81 = 29.43 x 33 = 971.19 / 4 = 242.8 N", "3 × 9.81 = 29.43 × 33 = 971.19 / 4 = 242.8 N"),
    ("X01", "sin22 = 0.37, sin40 = 0.64", "sin(22°) = 0.37 | sin(40°) = 0.64"),
    ("X01", "F(6.5)(0.37) = 2119(0.64) + 992.7(0.64)", "F × 6.5 × 0.37 = 2119 × 0.64 + 992.7 × 0.64"),
    ("X01", "F = 828 N", "F = 828 N"),
    ("X03", "3.0 x 33 = 99", "3.0 × 33 = 99"),
    ("X03", "no - need weight: 29.43 x 33 = 971.2", "no - need weight: 29.43 × 33 = 971.2"),
    ("X03", "F = 971.2/4 = 242.8 N", "F = 971.2 / 4 = 242.8 N"),
    ("X05", "243", "243"),
)
IN_WORDS = frozenset(
    (
        "pivot at elbow",
        "up forces = down forces",
        "shank is 40° from vertical",
        "moments about where the muscle pulls:",
        "V = vertical part of the tendon pull",
    )
)


@pytest.mark.parametrize(("working", "typed", "read"), LINES)
def test_a_line_is_read_as_it_was_meant(working: str, typed: str, read: str) -> None:
    assert read == " | ".join(read_back(each) for each in read_line(typed, VOCABULARY).pieces)


@pytest.mark.parametrize(("working", "typed", "read"), LINES)
def test_only_sentences_are_words_and_all_else_is_a_chain(working: str, typed: str, read: str) -> None:
    kinds = [Words if each in IN_WORDS else Chain for each in read.split(" | ")]
    assert kinds == [type(each) for each in read_line(typed, VOCABULARY).pieces]
