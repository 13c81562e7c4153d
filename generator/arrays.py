"""Which type does a number of this project have? A float, or an array of draws and speeds."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Flags = NDArray[np.bool_]
Numbers = float | Array
Places = NDArray[np.intp]
