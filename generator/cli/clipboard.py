"""The clipboard, by way of the tool that the desktop has for it."""

import os
import shutil
import subprocess

# Wayland, X11, macOS, Windows (there the pipe takes UTF-16 with its mark).
_TOOLS = (
    (("wl-copy",), "WAYLAND_DISPLAY", "utf-8"),
    (("xclip", "-selection", "clipboard"), "DISPLAY", "utf-8"),
    (("pbcopy",), "", "utf-8"),
    (("clip.exe",), "", "utf-16"),
)
_LONGEST = 10
"""Seconds that a tool may take."""


def put_on_clipboard(text: str) -> str:
    """Why the text could not be put there, in a sentence; "" where it stands there now."""
    why = "there is no clipboard tool (wl-copy, xclip, pbcopy or clip.exe)"
    for command, needs, encoding in _TOOLS:
        if (needs and not os.environ.get(needs)) or shutil.which(command[0]) is None:
            continue
        try:
            # The tool stays behind to hand the text over, so its own output must not be waited for.
            subprocess.run(
                command,
                input=text.encode(encoding),
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
                check=True,
                timeout=_LONGEST,
            )
        except (OSError, subprocess.SubprocessError):
            why = f"{command[0]} could not copy the text"
            continue
        return ""
    return why
