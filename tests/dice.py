"""Dice for random designs, seeded or drawn by hypothesis, and lengths that read in two systems."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Protocol, TypeVar

import numpy as np
from hypothesis import strategies as st

T = TypeVar("T")


@dataclass(frozen=True)
class Length:
    """A length in whole sixteenths of an inch: exact in feet and inches and in millimetres."""

    sixteenths: int

    @property
    def m(self) -> float:
        return self.sixteenths * 0.0254 / 16


@dataclass(frozen=True)
class Words:
    """A text with a length in it: `slab top at {}`."""

    form: str
    length: Length


class Dice(Protocol):
    """What a generator of designs asks for."""

    def whole(self, low: int, high: int) -> int: ...

    def choice(self, options: Sequence[T]) -> T: ...


class Seeded:
    """Dice from a numpy generator."""

    def __init__(self, seed: int) -> None:
        self.rng = np.random.default_rng(seed)

    def whole(self, low: int, high: int) -> int:
        return int(self.rng.integers(low, high + 1))

    def choice(self, options: Sequence[T]) -> T:
        return options[self.whole(0, len(options) - 1)]


class Drawn:
    """Dice from a hypothesis draw, so that failing designs shrink."""

    def __init__(self, draw: Callable[..., Any]) -> None:
        self.draw = draw

    def whole(self, low: int, high: int) -> int:
        return int(self.draw(st.integers(low, high)))

    def choice(self, options: Sequence[T]) -> T:
        return options[self.whole(0, len(options) - 1)]


def millimetres(length: Length) -> str:
    """1/16 in is 1.5875 mm exactly."""
    return f"{length.sixteenths * 15875 / 10000:.4f} mm"


def feet_inches(length: Length) -> str:
    """As a builder writes it, with feet from a foot up."""
    count = abs(length.sixteenths)
    inches, part = divmod(count, 16)
    feet, inches = divmod(inches, 12)
    small = f"{inches} {part}/16 in" if part else f"{inches} in"
    sign = "-" if length.sixteenths < 0 else ""
    return sign + (f"{feet} ft {small}" if feet else small)


def said(raw: Any, write: Callable[[Length], str]) -> Any:
    """Return a raw design with its lengths written as text."""
    if isinstance(raw, Length):
        return write(raw)
    if isinstance(raw, Words):
        text = write(raw.length)
        signed = text if text.startswith("-") else f"+{text}"
        return raw.form.replace("{+}", signed).replace("{}", text)
    if isinstance(raw, dict):
        return {key: said(value, write) for key, value in raw.items()}
    if isinstance(raw, list | tuple):
        return [said(value, write) for value in raw]
    return raw
