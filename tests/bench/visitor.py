"""A visitor of the app without a browser: a session that speaks the app's own web socket.

It keeps large messages as a page in a browser does, so that they come once; it draws nothing.
"""

import re
import time
import zlib
from base64 import b64decode
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from html import escape

from streamlit.proto.BackMsg_pb2 import BackMsg
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg
from websockets.asyncio.client import ClientConnection, connect

from geometry.designfile import edited
from geometry.units import INCH, show_level
from viz.carried import demo

PATIENCE_S = 300
MARK = re.compile(rb"House of user \d+")
PICTURE = re.compile(rb"base64,([A-Za-z0-9+/=]+)")
THICKNESS = "field footing/thickness"
# Widgets that choose one of several; the others used here are fields of text.
CHOICES = ("view", "set stage")


def mark(user: int) -> str:
    """The name of the user's house, by which all that is made of it is known."""
    return f"House of user {user}"


def design(user: int) -> str:
    """The demo under another name and wider by a foot for each user: no two share a solid."""
    text = edited(demo().read_text(encoding="utf-8"), ("project", "name"), mark(user))
    return text.replace('"42 ft, ', f'"{42 + user} ft, ')


def sixteenths(user: int, edit: int) -> int:
    """A footing's thickness in sixteenths of an inch; up to 8 edits, no two users share one."""
    return 160 + 8 * user + edit % 8


@dataclass(frozen=True)
class Took:
    """Seconds from sending a change: to the first message with the new figure, to the last."""

    figure: float
    whole: float


@dataclass
class Visitor:
    """One session of the app.

    ids: of widgets by their keys, as the messages tell them. kept: hashes of messages that need not
    come again. met: the names of houses in all that was received.
    """

    line: ClientConnection
    ids: dict[str, str] = field(default_factory=dict)
    kept: set[str] = field(default_factory=set)
    met: set[str] = field(default_factory=set)

    async def send(self, key: str = "", value: str = "", figure: str = "") -> Took:
        """Set a widget, or none, and take all messages until the page has run.

        figure: HTML that must be among them; where it is not, LookupError is raised.
        """
        told, came = BackMsg(), 0.0
        told.rerun_script.cached_message_hashes.extend(self.kept)
        if key:
            state = told.rerun_script.widget_states.widgets.add(id=self.ids[key])
            if key in CHOICES:
                state.string_array_value.data.append(value)
            else:
                state.string_value = value
        begun = time.monotonic()
        await self.line.send(told.SerializeToString())
        async for data in self.line:
            got = self._taken(bytes(data))
            if figure and not came and figure in got.delta.new_element.html.body:
                came = time.monotonic() - begun
            if got.WhichOneof("type") == "script_finished":
                if figure and not came:
                    raise LookupError(f"{figure} was not among the messages")
                return Took(came, time.monotonic() - begun)
        raise ConnectionError("the server hung up")

    def _taken(self, data: bytes) -> ForwardMsg:
        got = ForwardMsg.FromString(data)
        if got.metadata.cacheable:
            self.kept.add(got.hash)
        element = got.delta.new_element
        widget = getattr(element, element.WhichOneof("type") or "empty")
        if found := re.match(r"\$\$ID-[0-9a-f]+-(.*)", getattr(widget, "id", "")):
            self.ids[found[1]] = widget.id
        if model := element.bidi_component.bytes:
            data += zlib.decompress(model)
        data += b"".join(map(b64decode, PICTURE.findall(data)))
        self.met |= {name.decode() for name in MARK.findall(data)}
        return got

    async def put(self, user: int) -> None:
        """Put the user's own design in the place of the demo, and come back to the first page."""
        await self.send("view", "Set")
        await self.send("set stage", "Design file")
        await self.send("whole text", design(user))
        await self.send("view", "Layout")

    async def thicken(self, user: int, edit: int) -> Took:
        """Type a thickness of the footing; the new figure is the level of its underside."""
        count = sixteenths(user, edit)
        figure = f"<b>{escape(show_level(-count / 16 * INCH, 'ft-in'))}</b>"
        return await self.send(THICKNESS, f"{count // 16} {count % 16}/16 in", figure)


@asynccontextmanager
async def opened(port: int) -> AsyncIterator[Visitor]:
    """Connect to the app on this machine; leave it in the end. The first page comes by `send`."""
    address = f"ws://127.0.0.1:{port}/_stcore/stream"
    async with connect(
        address, subprotocols=["streamlit"], open_timeout=PATIENCE_S, ping_interval=None,
        max_size=None,
    ) as line:  # fmt: skip
        yield Visitor(line)
