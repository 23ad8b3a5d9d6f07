"""Words of names, of classes and of authors, one after the other: articles, verbs and plurals, two ways of spelling,
Markdown read; and the parts of a page that are told apart.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from formulas import a as letter
from formulas import one, q

from explain.document.author_markdown import prose
from explain.document.board import Board, Lesson, Question
from explain.document.decimal_comma import CommaNumber, with_commas
from explain.document.english import (
    a,
    counted,
    each_of,
    force_of,
    head_word,
    is_a_weight,
    is_of_the_body,
    is_plural,
    is_proper,
    listed,
    mass_of,
    noun_of,
    possessive,
    sentence,
    the,
    verb,
    weight_of,
)
from explain.document.figure_parts import force_part, part_of, parts
from explain.document.passage import (
    Answer,
    Arm,
    Arrow,
    Axis,
    Band,
    Blanks,
    Bullets,
    Caution,
    Curve,
    Derivation,
    Drawing,
    Emphasis,
    Heading,
    Judged,
    JudgedLine,
    Line,
    Maths,
    Opening,
    Page,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Prose,
    Reference,
    Row,
    Space,
    Span,
    Strong,
    Table,
    Text,
    Turn,
)
from explain.document.spelling import Spelling
from explain.document.untrusted_text import clean, one_line
from explain.document.volume import Part, Volume, heading


def says(words: str) -> Line:
    return (Text(words),)


# ---------------------------------------------------------------------- English
BODY = (
    "abdomen ankle arm biceps body brachialis calf chest deltoid elbow femur finger foot forearm hand head hip humerus "
    "jaw knee leg limb neck pelvis quadriceps scapula shank shoulder skull spine thigh thumb tibia toe torso triceps "
    "trunk wrist"
)


@pytest.mark.parametrize("name", BODY.split())
def test_a_part_of_the_body_has_the_article_from_the_first_and_is_no_persons_name(name: str) -> None:
    assert (f"the {name}", True, False) == (a(name), is_of_the_body(name), is_proper(name.title()))


@pytest.mark.parametrize("name", "ankles arms bodies calves hands feet scapulae".split())
def test_several_parts_of_the_body_are_known_too(name: str) -> None:
    assert (f"the {name}", True, True) == (a(name), is_of_the_body(name), is_plural(name))


STUFF = (
    "air earth equipment floor flour friction grain gravel ground hay ice luggage milk rest sand snow soil sugar water"
)
RANKS = "upper lower first second third fourth last left right near far inner outer front rear total whole entire other"


def test_stuff_and_what_there_is_one_of_have_the_article_from_the_first() -> None:
    assert [f"the {each}" for each in STUFF.split()] == [a(each) for each in STUFF.split()]
    assert [f"the {each} plank" for each in RANKS.split()] == [a(f"{each} plank") for each in RANKS.split()]
    assert "a plank" == a("plank") and "a sand bag" == a("sand bag")


def test_a_word_of_the_body_before_another_thing_is_no_part_of_the_body() -> None:
    assert ("a hand cart", "the upper arm", "the hand") == (a("hand cart"), a("upper arm"), a("hand"))


@pytest.mark.parametrize("word", "both two three four five six seven eight nine ten several many all".split())
def test_a_number_before_a_name_makes_it_plural_and_takes_the_articles_place(word: str) -> None:
    assert (True, f"{word} planks", "each plank") == (
        is_plural(f"{word} planks"),
        the(f"{word} planks"),
        each_of(f"{word} planks"),
    )


OWN = "the a an his her its their my your our this that these those each every one some no"


@pytest.mark.parametrize("word", [*OWN.split(), "Mira's", "Mira’s", "Jonas'"])
def test_a_name_with_an_article_of_its_own_gets_no_second_one(word: str) -> None:
    assert [f"{word} plank"] * 2 == [the(f"{word} plank"), a(f"{word} plank")]


@pytest.mark.parametrize(
    ("many", "single"),
    [
        ("feet", "foot"),
        ("teeth", "tooth"),
        ("people", "person"),
        ("children", "child"),
        ("men", "man"),
        ("women", "woman"),
        ("vertebrae", "vertebra"),
        ("scapulae", "scapula"),
        ("skis", "ski"),
        ("knives", "knife"),
        ("halves", "half"),
        ("calves", "calf"),
        ("bodies", "body"),
        ("glasses", "glass"),
        ("boxes", "box"),
        ("branches", "branch"),
        ("brushes", "brush"),
        ("planks", "plank"),
    ],
)
def test_plurals_are_known_and_each_of_them_too(many: str, single: str) -> None:
    assert (True, f"each {single}") == (is_plural(many), each_of(many))


@pytest.mark.parametrize(
    "name",
    "atlas bias canvas gas lens pancreas series biceps humerus pelvis iliopsoas press teres truss".split(),
)
def test_words_that_only_look_plural_are_not(name: str) -> None:
    assert (False, f"each {name}", f"{the(name)} carries") == (
        is_plural(name),
        each_of(name),
        f"{the(name)} {verb(name, 'carry')}",
    )


@pytest.mark.parametrize(
    ("name", "plural"),
    [
        ("levator scapulae", False),
        ("scapulae", True),
        ("Scapulae", True),
        ("plank & trestle", True),
        ("plank with ropes and hooks", False),
        ("ropes with a hook", True),
        ("plank, left end", False),
        ("ropes, left", True),
        ("Ellis", False),
        ("", False),
    ],
)
def test_what_a_name_is_about_decides_whether_it_is_plural(name: str, plural: bool) -> None:
    assert plural is is_plural(name)


DETAILS = "of above below at with in on from to under behind beside by for over"


@pytest.mark.parametrize("word", DETAILS.split())
def test_what_stands_behind_a_small_word_is_a_detail(word: str) -> None:
    assert ("plank", False) == (head_word(f"long plank {word} the ropes"), is_plural(f"long plank {word} the ropes"))


@pytest.mark.parametrize(
    ("name", "whole"),
    [
        ("L5/S1", "L5/S1"),
        ("C7", "C7"),
        ("muscle L5", "muscle L5"),
        ("disc L5/1", "disc L5/1"),
        ("T12/L1", "T12/L1"),
        ("point A", "point A"),
        ("rope 2", "rope 2"),
        ("rope AB", "the rope AB"),
        ("rope b", "the rope b"),
        ("rope 2b", "the rope 2b"),
    ],
)
def test_a_lettered_or_numbered_name_takes_no_article(name: str, whole: str) -> None:
    assert whole == the(name)


@pytest.mark.parametrize(
    ("name", "introduced"),
    [
        ("8 kg ball", "an 8 kg ball"),
        ("11 kg ball", "an 11 kg ball"),
        ("18 kg ball", "an 18 kg ball"),
        ("80 kg ball", "an 80 kg ball"),
        ("10 kg ball", "a 10 kg ball"),
        ("110 kg ball", "a 110 kg ball"),
        ("once-used rope", "a once-used rope"),
        ("onion", "an onion"),
        ("ewe", "a ewe"),
        ("eucalypt", "a eucalypt"),
        ("egg", "an egg"),
        ("unit", "a unit"),
        ("uniform beam", "a uniform beam"),
        ("uninsured van", "an uninsured van"),
        ("used rope", "a used rope"),
        ("usual rope", "a usual rope"),
        ("ukulele", "a ukulele"),
        ("utensil", "a utensil"),
        ("usher", "an usher"),
        ("honest scale", "an honest scale"),
        ("heirloom", "an heirloom"),
        ("hourglass", "an hourglass"),
        ("house", "a house"),
        ("FM radio", "an FM radio"),
        ("LED lamp", "an LED lamp"),
        ("S hook", "an S hook"),
        ("T bar", "a T bar"),
        ("ropes", "ropes"),
        ("iron bar", "an iron bar"),
    ],
)
def test_an_goes_before_the_sound_of_a_vowel(name: str, introduced: str) -> None:
    assert introduced == a(name)


def test_counts_up_to_twelve_are_words() -> None:
    words = "no one two three four five six seven eight nine ten eleven twelve 13".split()
    assert words == [counted(count) for count in range(14)]


@pytest.mark.parametrize(
    ("stem", "said"),
    [
        ("press", "presses"),
        ("push", "pushes"),
        ("reach", "reaches"),
        ("box", "boxes"),
        ("buzz", "buzzes"),
        ("go", "goes"),
        ("carry", "carries"),
        ("lay", "lays"),
        ("employ", "employs"),
        ("pull", "pulls"),
        ("be", "is"),
        ("have", "has"),
        ("key", "keys"),
        ("buy", "buys"),
        ("lie", "lies"),
    ],
)
def test_a_verb_of_one_and_of_several(stem: str, said: str) -> None:
    assert (said, {"be": "are"}.get(stem, stem)) == (verb("plank", stem), verb("planks", stem))


FORCES = "drag force forces friction lift pull push tension thrust"


def test_what_is_a_force_by_its_name_is_not_given_a_force() -> None:
    assert [f"the rope {each}" for each in FORCES.split()] == [force_of(f"rope {each}") for each in FORCES.split()]
    assert ("the force of the rope", "Leo's force") == (force_of("rope"), force_of("Leo"))


def test_what_is_a_weight_by_its_name() -> None:
    assert (True, True, False) == (is_a_weight("ankle weight"), is_a_weight("weights"), is_a_weight("weight rack"))
    assert ("the mass of Leo and Joss", "the weight of the planks") == (mass_of("Leo and Joss"), weight_of("planks"))
    assert "the length of Mira's bag" == noun_of("length", "Mira's bag")


@pytest.mark.parametrize(
    ("name", "proper"),
    [
        ("Mr. Osk", True),
        ("A. Osk", True),
        ("A. B.", False),
        ("MRI Osk", False),
        ("Leo and Joss", True),
        ("Leo and dog", False),
        ("Osk's", True),
        ("Hip", False),
        ("Left Hip", False),
        ("Hips", False),
        ("Scapulae", False),
    ],
)
def test_a_proper_name_has_a_capital_in_each_word(name: str, proper: bool) -> None:
    assert proper is is_proper(name)


@pytest.mark.parametrize(
    ("name", "owner"),
    [("glass", "the glass's"), ("planks", "the planks'"), ("Tess", "Tess's"), ("Ellis", "Ellis's"), ("A", "A's")],
)
def test_an_owner(name: str, owner: str) -> None:
    assert owner == possessive(name)


@pytest.mark.parametrize(
    ("name", "of_the_body"),
    [
        ("arm, plank", True),
        ("plank and arm", True),
        ("plank & arm", True),
        ("plank on the arm", False),
        ("arm of the crane", True),
        ("", False),
    ],
)
def test_a_name_is_of_the_body_if_one_of_its_parts_is(name: str, of_the_body: bool) -> None:
    assert of_the_body is is_of_the_body(name)


def test_lists_and_sentences() -> None:
    assert ("", "x", "x and y", "x, y and z") == tuple(map(listed, ([], ["x"], ["x", "y"], ["x", "y", "z"])))
    assert ["Up.", "Up?", "Up!", "Up.", "."] == list(map(sentence, ("up", "up?", "up!", "Up.", "")))


def test_each_of_two_things_is_said_of_both() -> None:
    assert ("each of the plank & trestle", "each left plank", "each plank") == (
        each_of("plank & trestle"),
        each_of("left planks"),
        each_of("the planks"),
    )


# ---------------------------------------------------------------------- spelling
# pairs as dictionaries have them (from memory)
TWO_SPELLINGS = (
    "anticlockwise/counterclockwise behaviour/behavior cancelled/canceled cancelling/canceling catalogue/catalog "
    "centre/center centred/centered centres/centers colour/color colours/colors emphasised/emphasized favour/favor "
    "fibre/fiber fibres/fibers grey/gray judgement/judgment labelled/labeled levelled/leveled licence/license "
    "metre/meter metres/meters mislabelled/mislabeled modelled/modeled modelling/modeling neighbour/neighbor "
    "neighbouring/neighboring neighbours/neighbors organised/organized recognised/recognized towards/toward "
    "travelled/traveled centimetre/centimeter centimetres/centimeters decimetre/decimeter decimetres/decimeters "
    "kilometre/kilometer kilometres/kilometers millimetre/millimeter millimetres/millimeters"
)
US = Spelling("American")


@pytest.mark.parametrize("pair", TWO_SPELLINGS.split())
def test_a_word_of_ours_has_its_american_spelling(pair: str) -> None:
    british, american = pair.split("/")
    assert f"The {american}. {american.capitalize()}!" == US.text(f"The {british}. {british.capitalize()}!")
    assert f"x{british}x" == US.text(f"x{british}x")
    assert british == Spelling("British").text(british)


def test_a_class_that_says_level_and_upright() -> None:
    level = Spelling("British", (), "level and upright")
    said = "A vertical rope, a horizontal bar; horizontally and vertically, the horizontal and the vertical centre."
    assert "An upright rope, a level bar; level and upright, the level and the upright centre." == level.text(said)
    assert said == Spelling("British", (), "horizontal and vertical").text(said)


def test_names_stay_the_longest_first_even_with_marks_in_them() -> None:
    words = Spelling("American", ("grey (old)", "grey (old) centre", "plank"))
    assert "The grey (old) centre, grey (old), center and plank." == words.text(
        "The grey (old) centre, grey (old), centre and plank."
    )


PULL = letter("F_B")
NUMBER = one(q("5.2", "N"))


def _drawing(of: Any) -> Drawing:
    return Drawing((0.0, 0.5), "elbow", spans=(Span((0.0, 0.0), (0.5, 0.0), of),))


def _every_passage(centre: str, of: Any, comma: bool = False) -> tuple[Passage, ...]:
    said = (Text(centre), Strong(centre), Emphasis(centre), Reference(centre, "centre"), Maths(of))
    row = Row(of, (("=", of),), said, said)
    return (
        Heading(2, said),
        Paragraph(said),
        Answer(said),
        Caution(said),
        Derivation((row, row)),
        Blanks((said, said)),
        Bullets((said,)),
        Table(centre, (said,), ((said, said),), frozenset({1})),
        Picture(_drawing(of), centre, centre, said),
        Plot(
            "bars",
            centre,
            centre,
            Axis(centre, "centre"),
            Axis(centre, "centre"),
            (Curve(centre, ((0.5, 1.5),)),),
            ("centre",),
            said,
            True,
            4,
            comma,
        ),
        Space(centre, 60, (said,)),
        Judged(centre, (JudgedLine(1, "centre 5.2", "x", centre, (said,), True),)),
        Prose("centre 5.2"),
    )


def test_every_text_of_every_passage_is_spelled_but_what_people_wrote() -> None:
    assert _every_passage("the center 5.2", NUMBER) == US.passages(_every_passage("the centre 5.2", NUMBER))
    british = Spelling("British")
    assert _every_passage("the centre 5.2", NUMBER) == british.passages(_every_passage("the centre 5.2", NUMBER))
    one_of_them = Paragraph(says("the centre"))
    assert one_of_them == british.passage(one_of_them)


def test_every_number_of_every_passage_has_its_comma() -> None:
    comma = Spelling("British", decimal="comma")
    passages = _every_passage("the centre 5.2", NUMBER)
    expected = _every_passage("the centre 5,2", with_commas(NUMBER), True)
    assert expected == comma.passages(passages)
    changed = comma.passages(passages)
    rows, picture = changed[4], changed[8]
    assert isinstance(rows, Derivation) and isinstance(picture, Picture)
    numbers = [rows.rows[0].left, rows.rows[0].right[0][1], picture.drawing.spans[0].label]
    assert [CommaNumber] * 3 == [type(of[0].factors[0].number) for of in numbers]  # type: ignore[union-attr]
    assert NUMBER == US.formula(NUMBER) and type(US.formula(NUMBER)[0].factors[0].number) is Decimal  # type: ignore[union-attr]


def test_lines_of_their_own_are_spelled_too() -> None:
    assert (says("the center"), (Maths(NUMBER),)) == US.lines((says("the centre"), (Maths(NUMBER),)))


def test_records_are_spelled_under_the_keys_that_hold_text() -> None:
    record = {"note": "centre", "id": "centre", "notes": ["centre", ("centre", 5)], "in": {"note": "centre"}}
    assert {
        "note": "center",
        "id": "centre",
        "notes": ["center", ["center", 5]],
        "in": {"note": "center"},
    } == US.record(record, ("note", "notes"))
    assert ("center", "centre", 5) == (US.record("centre", (), True), US.record("centre", ()), US.record(5, ()))


def test_a_comma_stands_between_two_digits_only() -> None:
    words = Spelling("American", ("v. 1.5",), decimal="comma")
    assert "1,5 and .5 and 5. and a.b; v. 1.5 center" == words.text("1.5 and .5 and 5. and a.b; v. 1.5 centre")


def test_numbers_with_a_comma_are_worth_what_they_were() -> None:
    number = with_commas(q("-5.20", "N"))
    assert (CommaNumber, Decimal("-5.20"), (("N", 1),)) == (type(number.number), number.number, number.unit)
    assert (CommaNumber, Decimal("5.20")) == (type(abs(number.number)), abs(number.number))
    part = Part("problem", number="1.5")
    assert part is with_commas(part)
    assert ("1.5", None, Decimal) == (with_commas("1.5"), with_commas(None), with_commas(Decimal))


# ---------------------------------------------------------------------- an author's Markdown
def numbered(mark: str, words: str) -> tuple[Passage, ...]:
    return (Paragraph((Text(mark), Text(words))),)


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ("a\\\nb", (Paragraph(says("a b")),)),
        ("> - a\n> - b", (Bullets((says("a"), says("b"))),)),
        ("> a\n>\n> b", (Paragraph(says("a")), Paragraph(says("b")))),
        ("    x = 1\n    y", (Paragraph(says("x = 1")), Paragraph(says("y")))),
        ("2. a\n\n   b\n3. c", numbered("2. ", "a") + (Paragraph(says("b")),) + numbered("3. ", "c")),
        ("1. a", numbered("1. ", "a")),
        ("- # Head\n- **b**", (Bullets(((Strong("Head"),), (Strong("b"),))),)),
        ("- 1. a", (Bullets(((*says("1. "), *says("a")),)),)),
        ("- | h |\n  |---|\n  | x |", (Bullets((says("h"), says("x"))),)),
        ("***a***", (Paragraph((Strong("a"),)),)),
        ("**a *b***", (Paragraph((Strong("a b"),)),)),
        ("*a **b***", (Paragraph((Emphasis("a "), Strong("b"))),)),
        ("*`x`*", (Paragraph((Emphasis("x"),)),)),
        ("*[here](http://x/y)*", (Paragraph((Emphasis("here (http://x/y)"),)),)),
        ("[http://x/y](http://x/y)", (Paragraph(says("http://x/y")),)),
        ("[ ](http://x/y)", (Paragraph(says("http://x/y")),)),
        ("Q\n(a) x\n(i) y\n(ii) z", tuple(Paragraph(says(each)) for each in ("Q", "(a) x", "(i) y", "(ii) z"))),
        ("Q\n(iv) u\n(viii) v", tuple(Paragraph(says(each)) for each in ("Q", "(iv) u", "(viii) v"))),
        ("Q\n(a)x\n(ab) y\n(A) z", (Paragraph(says("Q (a)x (ab) y (A) z")),)),
        ("Q  \n(a) x", (Paragraph(says("Q")), Paragraph(says("(a) x")))),
        ("Q\n*(a) x*", (Paragraph(says("Q")), Paragraph((Emphasis("(a) x"),)))),
        (
            "| h | n |\n|:--|:-:|\n| x | 2 |\n| y | **3** |",
            (Table("", (says("h"), says("n")), ((says("x"), says("2")), (says("y"), (Strong("3"),)))),),
        ),
        ("| h |\n|--:|\n", (Table("", (says("h"),), (), frozenset({0})),)),
        ("a\tb", (Paragraph(says("a b")),)),
        ("![x](y)", (Paragraph(says("!x (y)")),)),
        ("<b>x</b>", (Paragraph(says("<b>x</b>")),)),
        ("#\n", ()),
    ],
)
def test_what_an_author_writes(source: str, expected: tuple[Passage, ...]) -> None:
    assert expected == prose(source)


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("a\r\nb\rc\x85d\u2028e\u2029f", "a\nb\nc\nd\ne\nf"),
        ("\x00\x08\x0b\x1f\x7f\x9f", "\ufffd" * 6),
        ("\u202a\u202e\u2066\u2069\ud800\udfff\ufffe\uffff", "\ufffd" * 8),
        ("\t\u200b\u2065\ufffd", "\t\u200b\u2065\ufffd"),
    ],
)
def test_what_could_steer_is_replaced(typed: str, kept: str) -> None:
    assert (kept, kept.replace("\n", " ").replace("\t", " ")) == (clean(typed), one_line(typed))


# ---------------------------------------------------------------------- what books, lessons and figures are made of
def test_a_heading_has_its_number_and_problems_say_so() -> None:
    assert (("Problem 2.3", "Jug"), ("2", "Arms")) == (
        heading(Part("problem", number="2.3", title="Jug")),
        heading(Part("chapter", number="2", title="Arms")),
    )


def test_contents_name_what_has_a_heading_except_single_answers() -> None:
    listed_parts = (Part("chapter", level=1), Part("prose"), Part("answer", level=2), Part("problem", level=2))
    volume = Volume("T", "", (), "", "", "", listed_parts)
    assert [listed_parts[0], listed_parts[3]] == list(volume.listed())
    assert ("en", "A4", ()) == (volume.language, volume.paper, volume.index)


def test_what_is_not_said_of_a_page_is_as_usual() -> None:
    page, board, lesson = Page("T", ()), Board("p", "l"), Lesson("T", ())
    assert ("en", "A4", "en") == (page.language, page.paper, lesson.language)
    assert ((), None, None, False, "", 1.0, (), ()) == (
        board.passages,
        board.picture,
        board.shown,
        board.tight,
        board.chapter,
        board.squeeze,
        board.said,
        board.asks,
    )
    plot = Plot("lines", "T", "D", Axis("x"), Axis("y"), ())
    assert ((), (), False, 3, False, "", "") == (
        plot.names,
        plot.caption,
        plot.tabled,
        plot.figures,
        plot.comma,
        plot.x.unit,
        Question("Why?").answer,
    )
    assert (True, False, "couple", 0, None, False) == (
        Arm((0.0, 0.0), ()).needed,
        Band((0.0, 0.0), (1.0, 0.0)).growing,
        Turn("t", (), (0.0, 0.0), 1).kind,
        Drawing((0.0, 0.0), "p").sense,
        Drawing((0.0, 0.0), "p").surface,
        JudgedLine(1, "", "", "").marked,
    )
    part = Part("prose")
    assert ("", 0, "", "", (), "") == (part.anchor, part.level, part.number, part.title, part.body, part.ready)


WHERE = (0.0, 0.0)
BICEPS, ROCK, JOINT_X, JOINT_Y = (
    Arrow(name, kind, (), WHERE, 90.0)
    for name, kind in (("biceps", "muscle"), ("rock", "load"), ("level", "joint"), ("upright", "joint"))
)
COUPLE, TURN = Turn("hand", (), WHERE, 1), Turn("twist", (), WHERE, 1, "joint")


@pytest.mark.parametrize(
    ("drawing", "expected"),
    [
        (Drawing(WHERE, "p"), ("body",)),
        (
            Drawing(WHERE, "p", arrows=(JOINT_X, BICEPS, ROCK, JOINT_Y), turns=(COUPLE, TURN)),
            ("body", "*biceps", "*rock", "*hand", "joint"),
        ),
        (Drawing(WHERE, "p", turns=(TURN,)), ("body", "joint")),
        (Drawing(WHERE, "p", spans=(Span(WHERE, WHERE, ()),)), ("body", "arms")),
        (Drawing(WHERE, "p", openings=(Opening(WHERE, 0.0, 9.0, ()),)), ("body", "arms")),
        (Drawing(WHERE, "p", arrows=(replace(BICEPS, arm=Arm(WHERE, ())), ROCK)), ("body", "*biceps", "*rock", "arms")),
        (Drawing(WHERE, "p", axes=(("x", 0.0),)), ("body", "signs")),
        (Drawing(WHERE, "p", sense=-1), ("body", "signs")),
    ],
)
def test_a_figure_grows_in_parts(drawing: Drawing, expected: tuple[str, ...]) -> None:
    assert expected == parts(drawing)


def test_a_force_is_a_part_by_its_name_and_the_joint_force_is_one() -> None:
    assert ("*biceps", "joint", "*hand", "*x") == (part_of(BICEPS), part_of(JOINT_X), part_of(COUPLE), force_part("x"))
