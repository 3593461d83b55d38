"""How the program ends, and a parser of its words that says so shortly. The help loads no more than this."""

import argparse
from typing import NoReturn

USAGE_MISTAKE = 2
OUR_BUG = 70


class Parser(argparse.ArgumentParser):
    """An argument parser that says what is wrong in one line, and where to read how it goes."""

    def error(self, message: str) -> NoReturn:
        self.exit(USAGE_MISTAKE, f"{self.prog}: {message}\nSee `{self.prog} --help`.\n")
