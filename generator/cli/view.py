"""`tinleaf view`: the publication and the kitchen desk in the browser, on this machine."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from generator.cli.options import USAGE_MISTAKE, add_content, add_day, content_of
from generator.cli.terminal import say

if TYPE_CHECKING:
    from generator.importer.model import Brought

SUMMARY = "the publication and the kitchen desk in a browser on this machine"
TEXT = """\
Serves the publication on loopback and loads its pages again when a file is saved; beside it stands
the desk: every bake with its state and its papers, the bench, the editor, the pantry, the copies
that went out. Errors are shown in the page, and the last good pages stay. Nothing is written into
an output folder. Ctrl-C ends it.

--lan shares it with a tablet in the kitchen: a code in the terminal lets one device in, once. What
passes over your network is not encrypted; use it in a network that is your own.
"""
EXAMPLES = """\
examples:
  tinleaf view                     then open the address that it prints; the desk is at /desk/
  tinleaf view my-baking --port 9000
  tinleaf view --lan               with a code for the tablet

exit: 0 ended, 1 it cannot serve (a port that is taken), 2 a mistake on the command line
"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_content(parser, positional=True)
    parser.add_argument(
        "--port", metavar="N", type=port, help="the port; without it 8460 or the next that is free"
    )
    parser.add_argument("--lan", action="store_true", help="share it with a tablet on the same network")
    add_day(parser)


def port(text: str) -> int:
    if not text.isascii() or not text.isdigit() or int(text[:6]) > 65535:
        raise argparse.ArgumentTypeError(f"“{text}” is not a port from 0 (any that is free) to 65535")
    return int(text)


def run(parser: argparse.ArgumentParser, options: argparse.Namespace) -> int:
    content = content_of(parser, options)
    return serve(content, options)


def serve(content: Path, options: argparse.Namespace, brought: "tuple[Brought, ...]" = ()) -> int:
    """Serves until it is told to end. With `brought`, these wait to be looked over."""
    from generator.desk.entry_code import Door
    from generator.desk.serve import house_of, new_token, own_address, run, sockets_for
    from generator.render.theme import DEFAULT

    lan = own_address() if options.lan else ""
    if options.lan and not lan:
        say("this machine has no address on a network to share the desk at; leave out --lan")
        return USAGE_MISTAKE
    try:
        sockets = sockets_for(options.port, lan=lan)
    except OSError as error:
        say(f"port {options.port} cannot be used: {error.strerror}. Name another with --port, or none")
        return 1
    number = sockets[0].getsockname()[1]
    door = Door(is_open=bool(lan), tell=lambda code: _tell_code(f"http://{lan}:{number}/desk/enter", code))
    token = new_token()
    house = house_of(content, day=options.day, door=door, theme=DEFAULT, token=token)
    here = f"http://127.0.0.1:{number}"
    reviews = [f"{here}/desk/review/{house.reviews.add(each)}" for each in brought]

    def started() -> None:
        print(f"the publication  {here}/\nthe desk         {here}/desk/", flush=True)
        for address in reviews:
            print(f"to look over     {address}", flush=True)
        print("Ctrl-C ends it.", flush=True)

    run(house, sockets, token=token, started=started)
    return 0


def _tell_code(address: str, code: str) -> None:
    from generator.render.qr import terminal_code

    print(f"\n{terminal_code(f'{address}#{code}')}\nfor one tablet: {address}  code {code}", flush=True)
