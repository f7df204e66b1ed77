"""Lets no process of Python look beyond this machine; the file REFUSED names hears what tried."""

import os
import sys

_NEAR = ("127.0.0.1", "::1", "localhost", "0.0.0.0", "", None)  # noqa: S104


def _look(event, details):
    if event in ("socket.connect", "socket.sendto", "socket.sendmsg"):
        # A pipe of this machine's own has no tuple for its place.
        place = details[1][0] if isinstance(details[1], tuple) else None
    elif event in ("socket.getaddrinfo", "socket.gethostbyname"):
        place = details[0]
    else:
        return
    if place not in _NEAR:
        with open(os.environ["REFUSED"], "a", encoding="utf-8") as file:  # noqa: PTH123
            file.write(f"{event} {place}\n")
        raise OSError(f"nothing beyond this machine: {place}")


sys.addaudithook(_look)
