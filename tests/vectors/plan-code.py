"""Packs a plan as docs/plan-format.md says, with zlib instead of Evenside's own code: python3 tests/vectors/plan-code.py"""

import base64
import json
import pathlib
import platform
import re
import zlib

HERE = pathlib.Path(__file__).parent
SOURCE = (HERE / "../../src/record/plan-dictionary.ts").read_text()
DICTIONARY = "".join(re.findall(r"^  '(.*)',$", SOURCE, re.M)).encode()

LIMITS = {
    "setsADay": {"least": 1, "most": 3},
    "repsASet": {"least": 5, "most": 15},
    "holdS": {"least": 0, "most": 5},
}
DOCUMENT = {
    "evenside": "plan",
    "version": 1,
    "plan": {
        "id": "3f0c1f7e-6d1b-4a8e-9b43-5f9f0f6f2c11",
        "writtenAt": "2026-05-04T09:30:00.000Z",
        "origin": "own",
        "by": {"role": "therapist", "name": "Núria Àlvarez 例"},
        "revises": None,
        "items": [
            {
                "id": "b2a5d4de-2f54-4f0d-8b1e-0f7a8d1c9e22",
                "exercise": "knee-straighten",
                "sides": ["right"],
                "start": {"setsADay": 2, "repsASet": 10, "holdS": 2},
                "target": {"kind": "range", "fromDeg": 10, "toDeg": 42.5},
                "tempoS": None,
                "restS": 90,
                "spread": "day",
                "daysAWeek": 5,
                "symptomLimit": 4,
                "progression": {
                    "steps": [{"field": "repsASet", "by": 5}],
                    "limits": LIMITS,
                    "clearRise": 2,
                    "settledWithin": 1,
                    "goodDays": 1,
                    "goodDaysAfterFlare": 2,
                    "doneShare": 0.8,
                    "freshDays": 3,
                },
                "cautions": ["stop-if-worse", "up-to-symptoms"],
                "basis": "therapist",
            }
        ],
        "selfChecks": {"checks": ["heel-walk"], "sides": ["left", "right"], "everyDays": 7},
    },
}


def code(level: int, strategy: int = zlib.Z_DEFAULT_STRATEGY) -> str:
    text = json.dumps(DOCUMENT, separators=(",", ":"), ensure_ascii=False).encode()
    packer = zlib.compressobj(level, zlib.DEFLATED, -15, 9, strategy, DICTIONARY)
    packed = b"\x01" + packer.compress(text) + packer.flush()
    head = packed[:1] + zlib.crc32(packed).to_bytes(4, "big")
    return base64.urlsafe_b64encode(head + packed[1:]).rstrip(b"=").decode()


RESULT = {
    "tool": f"zlib {zlib.ZLIB_RUNTIME_VERSION} of Python {platform.python_version()}, tests/vectors/plan-code.py",
    "document": DOCUMENT,
    "codes": {
        "stored": code(0),
        "fastest": code(1),
        "usual": code(6),
        "smallest": code(9),
        "huffman only": code(9, zlib.Z_HUFFMAN_ONLY),
        "fixed tables": code(9, zlib.Z_FIXED),
    },
}
(HERE / "plan-code.json").write_text(json.dumps(RESULT, indent=2, ensure_ascii=False) + "\n")
