"""Files that are no honest work: what a mistake, a broken disk or a trick may hand over."""

from collections.abc import Callable
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile

from geometry.faults.text import DEEPEST, LARGEST_BYTES, LONGEST_LINE, MOST_KEYS, MOST_VALUES
from geometry.survey.reading import MOST_COLUMNS, MOST_SHOTS
from geometry.takeoff.tickets import MOST_TICKETS
from tests.dice import Dice

HEAD = '[project]\nname = "n"\nnumbers = "m"\n'
SQUARE = "corners = [[0, 0], [10, 0], [10, 10], [0, 10]]\n"
AREA = f'[[area]]\nname = "a"\n{SQUARE}'
SHOTS = "x (m),y (m),level (m)\n"
TICKETS = "date,material,amount,place\n"
TICKET = "2026-04-02,stone-57,14 tons,floor\n"


def areas(count: int, corners: Callable[[int], str], more: str = "") -> str:
    """A design of so many areas."""
    rows = (f'[[area]]\nname = "a{n}"\ncorners = [{corners(n)}]\n{more}' for n in range(count))
    return HEAD + "".join(rows)


def _wave(x: float, y: float, count: int) -> str:
    """Corners of a jagged block of 20 m."""
    low = [(x + 40 * n / count, y + 0.3 * (n % 2)) for n in range(count // 2)]
    high = [(x + 20 - 40 * n / count, y + 20 - 0.3 * (n % 2)) for n in range(count // 2)]
    return ",".join(f"[{a:.3f},{b:.3f}]" for a, b in (*low, *high))


def bomb(mega: int = 20) -> bytes:
    """A ZIP file, as workbooks are too, that is a thousand times as large when it is unpacked."""
    whole = BytesIO()
    with ZipFile(whole, "w", ZIP_DEFLATED) as out:
        out.writestr("xl/workbook.xml", b"0" * mega * 1_000_000)
    return whole.getvalue()


BOMB = bomb()

# What is refused by a limit, and a word of the sentence that says so.
LIMITS = {
    "too large": ("# wide\n" * (LARGEST_BYTES // 7 + 9), "larger than 1 MB"),
    "too long a line": ("#" * (LONGEST_LINE + 1), "characters"),
    "too deep": ("a" + ".a" * DEEPEST + " = 1\n", "deeper"),
    "too many keys": ("".join(f"k{n} = 1\n" for n in range(MOST_KEYS + 1)), "keys"),
    "too many tables": ("".join(f"[t{n}]\n" for n in range(20_000)), "keys"),
    "too many values": ("x = [" + "1,\n" * (MOST_VALUES + 1) + "]", "values"),
    "too many areas": (
        areas(21, lambda n: f"[{n * 30},0],[{n * 30 + 9},0],[{n * 30},9]"),
        "most 20",
    ),
}

DESIGNS = {
    **{name: text.encode() for name, (text, _) in LIMITS.items()},
    "empty": b"",
    "an archive": BOMB,
    "nothing but nul": b"\0" * 5000,
    "utf-16": (HEAD + AREA).encode("utf-16"),
    "a mark of byte order": b"\xef\xbb\xbf" + (HEAD + AREA).encode(),
    "two marks of byte order": b"\xef\xbb\xbf" * 2 + (HEAD + AREA).encode(),
    "windows lines": (HEAD + AREA).replace("\n", "\r\n").encode(),
    "old lines": (HEAD + AREA).replace("\n", "\r").encode(),
    "cut in a letter": (HEAD + AREA + "# é").encode()[:-1],
    "ten megabytes": b"# x\n" * 2_500_000,
    "a hundred thousand areas": (HEAD + "[[area]]\n" * 100_000).encode(),
    "lists in lists": ("a = [\n" + "[\n" * 100_000 + "]\n" * 100_000 + "]").encode(),
    "a number without end": (HEAD + "x = " + "9" * 9000 + "\n" + AREA).encode(),
    "beyond any house": (HEAD + AREA.replace("10", "1e308")).encode(),
    "no number": (HEAD + AREA.replace("10", "nan") + AREA.replace("10", "-inf")).encode(),
    "a table in itself": (HEAD + AREA + "[area.area.area.area]\nname = 'area'\n").encode(),
    "two names in a ring": (HEAD + (AREA + AREA.replace('"a"', '"b"')) * 10).encode(),
    "right to left": (HEAD.replace('"n"', '"\u202eabc\u2066"') + AREA).encode(),
    "a nul in a name": (HEAD.replace('"n"', '"a\\u0000b"') + AREA).encode(),
    "areas on one spot": areas(20, lambda _: _wave(0, 0, 400)).encode(),
    "as large as allowed": areas(
        20, lambda n: _wave(25 * (n % 5), 25 * (n // 5), 400)
    ).encode(),
    "piers on one spot": areas(
        20, lambda n: _wave(25 * (n % 5), 25 * (n // 5), 40),
        more="[[area.pier]]\nat = [5, 5]\n" * 200,
    ).encode(),
}  # fmt: skip

SHOT_FILES = {
    "an archive": BOMB,
    "empty": b"", "nul": SHOTS.encode() + b"\0", "utf-16": SHOTS.encode("utf-16"),
    "lines only": b"\n" * 10_000_000,
    "too many": (SHOTS + "0,0,0\n" * (MOST_SHOTS + 1)).encode(),
    "too wide": ",".join(f"x{n}" for n in range(MOST_COLUMNS + 1)).encode() + b"\n1\n",
    "ten megabytes of letters": (SHOTS + "a,b,c\n" * 1_700_000).encode(),
    "letters": (SHOTS + "a,b,c\n" * 50_000).encode(),
    "open quotes": (SHOTS + '"a,"b\n' * 50_000).encode(),
    "one long cell": (SHOTS + "1" * 2_000_000 + ",1,1\n").encode(),
    "no numbers": (SHOTS + "nan,inf,-inf\n1e999,1e-999,0x10\n").encode(),
    "one spot": (SHOTS + "5,5,-0.4\n" * 100_000).encode(),
    "one line": (SHOTS + "".join(f"{n / 1e4},5,-0.4\n" for n in range(100_000))).encode(),
    "windows lines": (SHOTS + "1,1,-0.4\n" * 9).replace("\n", "\r\n").encode(),
    "formula": (SHOTS + "=1+1,@x,-0.4\n").encode(),
}  # fmt: skip

TICKET_FILES = {
    "an archive": BOMB,
    "empty": b"", "nul": (TICKETS + "\0").encode(),
    "too many": (TICKETS + TICKET * (MOST_TICKETS + 1)).encode(),
    "ten megabytes": (TICKETS + TICKET * 300_000).encode(),
    "letters": (TICKETS + "a,b,c,d\n" * 100_000).encode(),
    "open quotes": (TICKETS + '"a\n' * 100_000).encode(),
    "one long line": (TICKETS + "x" * 900_000).encode(),
    "commas": (TICKETS + "," * 900_000).encode(),
    "no numbers": (TICKETS + "2026-04-02,stone-57,1e999 t,\n9999-99-99,57,nan t,\n").encode(),
    "windows lines": (TICKETS + TICKET).replace("\n", "\r\n").encode(),
}  # fmt: skip

KEPT_FILES = {
    "empty": b"", "no table": b"[1]", "a number": b"1", "nul": b"\0" * 99,
    "deep": b"[" * 100_000, "deep tables": b'{"a":' * 50_000,
    "digits": b'{"format": ' + b"1" * 9000 + b"}",
    "another kind": b'{"format": 1, "status": "done", "figures": {"tof_m": "high"}}',
    "no figures": b'{"format": 1, "status": "done", "figures": {}, "note": 5}',
    "another state": b'{"format": 1, "status": "=1+1", "figures": null}',
}  # fmt: skip

_BITS = (
    b"\0", b"\xff", b"\xef\xbb\xbf", b"\r\n", b'"""', b"[[", b"]", b"{", b"=", b"nan", b"-inf",
    b"1e308", b"9" * 400, "\u202e".encode(), "é".encode()[:1], b"true", b"''", b"\\u0000",
    b"1979-05-27T07:32:00Z", b"../", b"#", b"'", b",,,", b"[[area]]\n", b"0x" + b"f" * 300,
)  # fmt: skip


def mutated(dice: Dice, data: bytes) -> bytes:
    """Return a file after one to five random changes of bytes, words or lines."""
    for _ in range(dice.whole(1, 5)):
        at, end = sorted((dice.whole(0, len(data)), dice.whole(0, len(data))))
        kind = dice.whole(0, 4)
        if kind == 0:
            data = data[:at] + dice.choice(_BITS) + data[at:]
        elif kind == 1:
            data = data[:at] + dice.choice(_BITS) + data[at + dice.whole(1, 9) :]
        elif kind == 2:
            data = data[:at] + data[end:]
        elif kind == 3:
            data = data[:end] + data[at:]
        else:
            lines = data.split(b"\n")
            lines.insert(dice.whole(0, len(lines)), dice.choice(lines))
            data = b"\n".join(lines)
    return data
