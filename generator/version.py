"""Which version of the tool is this?"""

VERSION = "0.1.0"
