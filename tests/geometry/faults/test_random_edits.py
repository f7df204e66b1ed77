"""Whatever is typed into a design file, it gives a design that can be drawn, or sentences."""

from pathlib import Path

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from geometry.designfile import read_design
from geometry.errors import DesignError, Fault
from geometry.layout.lay import lay_out
from geometry.project import Design
from geometry.report import report
from tests.rolls import rolls

EXAMPLES = sorted((Path(__file__).parents[3] / "assets" / "examples").glob("*.toml"))
TEXTS = tuple(path.read_text(encoding="utf-8") for path in EXAMPLES)
VALUES = (
    "0", "-1", "1e9", "nan", "-inf", "true", "[]", "{}", "''", "'x'", "[[1]]", "{ a = 1 }",
    "'TOF'", "'finished floor'", "'slab top at TOF'", "'-8 in'", "'2 ft'", "'9 ft'", "'30 in'",
    "'1/2 in'", "'300 mm'", "2.5", "'concrete'", "'xps-iv'", "'sdr35-6'", "'level'", "'3 %'",
    "[1, 2]", "[2]", "['0, 0', '9 ft, 0', '9 ft, 9 ft']", "2026-01-01", "'all'", "'foam top'",
    "'at or below'", "'crown'",
    "'garage'", "'basement'", "\"\"\"x\ny\"\"\"", "0xffffffffffffffffffffff", "'round'",
)  # fmt: skip
LINES = (
    "[[height_rule]]", "point = 'invert'",
    "[[area]]", "[area]", "[[area.pier]]", "[sump]", "[drain.holes]", "x = 1", "]", "}", '"""',
    "name = 'twice'", "at = '9 ft, 9 ft'", "step = '2 ft'", "[[floor.layer]]", "[floor]",
    "sides = [1, 2]",
    "high_corner = 2", "outlet_invert = '-7 in'", "edge_board = {}", "units = 'metric'",
)  # fmt: skip


@st.composite
def edits(draw: st.DrawFn) -> str:
    """One of the examples after one to four random edits of a value, a key, a line or a letter."""
    rows = draw(st.sampled_from(TEXTS)).split("\n")
    for _ in range(draw(st.integers(1, 4))):
        edit = draw(st.sampled_from((_value, _number, _key, _line, _letter)))
        place = draw(st.integers(0, max(len(rows) - 1, 0)))
        rows[place : place + 1] = edit(draw, rows[place])
        rows = rows or [""]
    return "\n".join(rows)


def _value(draw: st.DrawFn, row: str) -> list[str]:
    key, equals, _ = row.partition("=")
    return [f"{key}{equals} {draw(st.sampled_from(VALUES))}"] if equals else [row]


def _number(draw: st.DrawFn, row: str) -> list[str]:
    """Change one digit, so that most files still read and the building is what is wrong."""
    digits = [n for n, letter in enumerate(row) if letter.isdigit()]
    if not digits:
        return [row]
    at = draw(st.sampled_from(digits))
    return [row[:at] + draw(st.sampled_from("0123456789")) + row[at + 1 :]]


def _key(draw: st.DrawFn, row: str) -> list[str]:
    key, equals, value = row.partition("=")
    at = draw(st.integers(0, len(key)))
    return [f"{key[:at]}{draw(st.sampled_from('abc_. '))}{key[at + 1 :]}{equals}{value}"]


def _line(draw: st.DrawFn, row: str) -> list[str]:
    return draw(st.sampled_from(([], [row, row], *([line, row] for line in LINES))))


def _letter(draw: st.DrawFn, row: str) -> list[str]:
    at = draw(st.integers(0, len(row)))
    return [row[:at] + draw(st.characters(exclude_categories=("Cs",))) + row[at + 1 :]]


@given(edits())
@example("")
@example("[project]\nname='x'\n[[area]]\nname='a'\ncorners=[[0,0],[1e9,0],[0,1e9]]")
@example("[project]\nname='x'\nnumbers=[]\nunits={}\n[[area]]\n[[area]]\n[[area]]")
@settings(max_examples=rolls(80), deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_text_gives_a_design_or_sentences(text: str) -> None:
    design, faults = read(text)
    if design is not None:
        assert report(lay_out(design), None).to_json()
        return
    assert faults
    for fault in faults:
        assert fault.place
        assert 10 < len(fault.sentence) <= 403
        assert fault.line is None or 1 <= fault.line <= text.count("\n") + 1


def read(text: str) -> tuple[Design | None, tuple[Fault, ...]]:
    try:
        return read_design(text), ()
    except DesignError as error:
        return None, error.faults
