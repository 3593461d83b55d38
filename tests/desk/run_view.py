"""Runs the command line, for a process of its own."""

from generator.cli.main import run

if __name__ == "__main__":
    run()
