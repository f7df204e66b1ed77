"""Lets no process of Python look beyond this machine; the file REFUSED names hears what tried."""

import os
import sys

_NEAR = ("127.0.0.1", "::1", "localhost", "0.0.0.0", "", None)  # noqa: S104


def _look(event, details):
    if event == "socket.connect" and isinstance(details[1], tuple):
        place = details[1][0]
    elif event in ("socket.getaddrinfo", "socket.gethostbyname", "socket.sendto"):
        place = details[1][0] if event == "socket.sendto" else details[0]
    else:
        return
    if place not in _NEAR:
        with open(os.environ["REFUSED"], "a", encoding="utf-8") as file:  # noqa: PTH123
            file.write(f"{event} {place}\n")
        raise OSError(f"nothing beyond this machine: {place}")


sys.addaudithook(_look)
