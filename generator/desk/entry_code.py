"""The one-time code that lets another machine in, and the sessions it was exchanged for."""

import secrets
from collections.abc import Callable

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789"
"""Without I, O, 0 and 1, which are read for one another."""
LENGTH = 8
MOST_GUESSES = 5


class Door:
    """Gives a code out and takes it once. After `MOST_GUESSES` wrong ones the code is another.

    `tell` is called with each new code, for the terminal. Without `open` nobody is let in.
    """

    def __init__(self, *, is_open: bool, tell: Callable[[str], None] = lambda code: None) -> None:
        self._is_open, self._tell = is_open, tell
        self._sessions: set[str] = set()
        self._wrong = 0
        self.code = ""
        if is_open:
            self._renew()

    def _renew(self) -> None:
        self.code = "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
        self._wrong = 0
        self._tell(self.code)

    def enter(self, typed: str) -> str:
        """A new session for the right code, which is then used up; "" for a wrong one."""
        plain = "".join(each for each in typed.upper() if each in LETTERS)
        if not self._is_open:
            return ""
        if not secrets.compare_digest(plain.encode(), self.code.encode()):
            self._wrong += 1
            if self._wrong >= MOST_GUESSES:
                self._renew()
            return ""
        session = secrets.token_urlsafe(32)
        self._sessions.add(session)
        self._renew()
        return session

    def knows(self, session: str) -> bool:
        return any(secrets.compare_digest(session.encode(), each.encode()) for each in self._sessions)
