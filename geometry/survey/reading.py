"""A file of shots, as text or bytes, to shots and every fault in it."""

import numpy as np

from geometry.project import Design
from geometry.survey.columns import lengths, whats
from geometry.survey.doubles import without_doubles
from geometry.survey.header import LIKE, Column, Header, read_header
from geometry.survey.rows import Columns, columns_of, lines_of
from geometry.survey.shots import Ints, Marks, ShotFault, Shots, no_shots, some
from geometry.units import System, show_length

# Farther than this from the plan's origin, or from top of footing, the unit must be wrong, m.
FAR_M, HIGH_M = 300.0, 15.0
# More than any crew shoots; what is larger is another file.
LARGEST_BYTES = 20_000_000
MOST_SHOTS = 200_000
MOST_COLUMNS = 100

_TOO_LARGE = f"the file is larger than {LARGEST_BYTES // 10**6} MB; keep the floor's own shots"
_TOO_MANY = (
    f"the file holds more than {MOST_SHOTS:,} shots or {MOST_COLUMNS} columns; "
    "keep the floor's own shots"
)


def read_shots(text: str | bytes, design: Design) -> Shots:
    """Return the shots of a CSV file, and all its faults at once. Never raises for its content."""
    words, wrong = _words(text)
    if wrong:
        return no_shots([wrong])
    lines = lines_of(words)
    if not lines.text:
        return no_shots([ShotFault(f"the file holds no shots; {LIKE}", weight="file")])
    if len(lines.text) > MOST_SHOTS + 1 or len(lines.head) > MOST_COLUMNS:
        return no_shots([ShotFault(_TOO_MANY, weight="file")])
    header, faults = read_header(lines.head, design.project.numbers)
    if "rod" in header.place and design.datum.instrument is None:
        faults.append(
            ShotFault("rod readings need the laser's elevation: state `instrument` under "
                      "[datum] in the design", weight="file")
        )  # fmt: skip
    if not any(f.weight == "file" for f in faults) and len(lines.text) == 1:
        faults.append(ShotFault("there is no shot below the header", weight="file"))
    if any(f.weight == "file" for f in faults):
        return no_shots(faults)
    columns, numbers, torn = columns_of(lines, header)
    shots, bad = _shots(columns, numbers, header, design, "_" in words)
    said = [*faults, *some(torn, "are torn"), *bad]
    return without_doubles(shots.kept(np.ones(len(shots), bool), said), design)


def _words(text: str | bytes) -> tuple[str, ShotFault | None]:
    if len(text) > LARGEST_BYTES:
        return "", ShotFault(_TOO_LARGE, weight="file")
    if isinstance(text, bytes):
        try:
            return _words(text.decode("utf-8-sig"))
        except UnicodeDecodeError as error:
            at = text[: error.start].count(b"\n") + 1
            return "", ShotFault(
                f"this is not UTF-8 text (line {at}); save the shots as CSV, UTF-8", weight="file"
            )
    if "\0" in text:
        return "", ShotFault("this is no text file; save the shots as CSV, UTF-8", weight="file")
    return text.removeprefix("\ufeff"), None


def _shots(
    columns: Columns, numbers: Ints, header: Header, design: Design, careful: bool
) -> tuple[Shots, list[ShotFault]]:
    wanted: tuple[Column, ...] = ("x", "y", header.height)
    read = [lengths(columns[header.place[c]], header.unit[c], c, numbers, careful) for c in wanted]
    x, y, height = (column for column, _ in read)
    faults = [fault for _, wrong in read for fault in wrong]
    datum = design.datum
    level = height
    if header.height == "elevation":
        level = height - datum.top_of_footing
    if header.height == "rod":
        level = (datum.instrument or 0.0) - height - datum.top_of_footing
    texts = columns[header.place["what"]] if "what" in header.place else ()
    code, said, wrong = whats(texts, len(numbers), design, numbers)
    names = columns[header.place["point"]] if "point" in header.place else ()
    shots = Shots(x, y, level, numbers, code, said, tuple(names))
    far, strange = _far(shots, design)
    every = sorted([*faults, *wrong, *strange], key=lambda f: f.row or 0)
    sound = np.isfinite(x) & np.isfinite(y) & np.isfinite(level) & (code >= 0) & ~far
    return shots.kept(sound, []), some(every, "cannot be read")


def _far(shots: Shots, design: Design) -> tuple[Marks, list[ShotFault]]:
    """Return which shots lie too far off to be meant, and say so."""
    system = design.project.units
    away = np.maximum(np.abs(shots.x), np.abs(shots.y)) > FAR_M
    high = np.abs(shots.level) > HIGH_M
    faults = [
        ShotFault(f"it lies more than {show_length(FAR_M, system)} from the plan's origin; "
                  "check the unit", int(shots.row[n]))
        for n in np.flatnonzero(away)
    ]  # fmt: skip
    faults += [
        ShotFault(f"it lies {_off(float(shots.level[n]), system)} top of footing; check the unit, "
                  "and [datum] in the design", int(shots.row[n]))
        for n in np.flatnonzero(high & ~away)
    ]  # fmt: skip
    marks: Marks = away | high
    return marks, faults


def _off(level: float, system: System) -> str:
    """Say how far off a level lies; beyond all sites the digits say nothing."""
    more = "more than " if abs(level) > FAR_M else ""
    size = show_length(min(abs(level), FAR_M), system)
    return f"{more}{size} {'above' if level > 0 else 'below'}"
