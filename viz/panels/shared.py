"""Results kept for all visits by what was asked: a bounded number, of bounded size in memory."""

import pickle
from collections import deque
from collections.abc import Callable
from functools import wraps
from threading import Lock
from typing import Any, ParamSpec, TypeVar

import streamlit as st

Asked = ParamSpec("Asked")
Given = TypeVar("Given")

# Bytes that the results of one function may take together; of pages with their marks, far larger.
ROOM, ROOM_OF_SHEETS = 25_000_000, 60_000_000
# Of the demo's permit set, memory held to bytes of it written down: every mark is an object.
_SPREAD = 10


def shared(
    most: int, saying: str | bool = False, room: int = ROOM
) -> Callable[[Callable[Asked, Given]], Callable[Asked, Given]]:
    """Keep so many results of a function, and drop them all where they outgrow the room.

    The function is pure, its results are never changed: every visit is given the same ones. Who
    asks for what another visit is making waits for it. saying: what is shown meanwhile.
    """

    def decorated(make: Callable[Asked, Given]) -> Callable[Asked, Given]:
        weights: deque[int] = deque(maxlen=most)
        lock = Lock()

        @wraps(make)
        def weighed(*asked: Asked.args, **named: Asked.kwargs) -> Given:
            made = make(*asked, **named)
            with lock:
                weights.append(weight(made))
                full = sum(weights) > room
                if full:
                    weights.clear()
            if full:
                held.clear()
            return made

        held = st.cache_resource(max_entries=most, show_spinner=saying)(weighed)
        return held

    return decorated


def weight(value: Any) -> int:
    """Return about how many bytes a result takes in memory."""
    if isinstance(value, str | bytes):
        return len(value)
    if isinstance(value, dict):
        return sum(map(weight, value.values()))
    if isinstance(value, tuple | list):
        return sum(map(weight, value))
    inner = getattr(value, "__dict__", {}).values()
    if inner and all(isinstance(one, str) for one in inner):
        return sum(map(len, inner))
    return _SPREAD * len(pickle.dumps(value, pickle.HIGHEST_PROTOCOL))
