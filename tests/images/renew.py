"""Draw the kept pictures anew: `python -m tests.images.renew`. Prints what changed.

Look at each one that changed before it is kept: a picture that nobody looked at proves nothing.
"""

from tests.images.pictures import FOLDER, KEPT, SHADES, difference, drawn, kept, same


def renew() -> None:
    """Write the pictures that are new or show something else than before."""
    for name in KEPT:
        file, now = FOLDER / f"{name}.png", drawn(name)
        if file.exists():
            before = kept(name)
            if same(before, now):
                print(f"{name}: unchanged")
                continue
            said = (
                "mean difference {:.2f} of 255, {:.2%} of the dots clearly".format(
                    *difference(before, now)
                )
                if before.size == now.size
                else f"{before.size} dots before, {now.size} now"
            )
            print(f"{name}: changed, {said}; look at {file}")
        else:
            print(f"{name}: new; look at {file}")
        now.quantize(SHADES).save(file, optimize=True)


if __name__ == "__main__":
    renew()
