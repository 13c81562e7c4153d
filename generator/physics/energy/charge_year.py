"""How does the charge of a bank go through the hours of a year?"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from generator.arrays import Array

Hook = Callable[[Array], int]


@dataclass(frozen=True)
class Flows:
    """What every hour brings and takes at the terminals [J]; (hours, options, years) each.

    ``own`` comes of itself and is lost where there is no room; ``plug`` is given only as far as
    there is room; ``load`` is drawn.
    """

    own: Array
    plug: Array
    load: Array


@dataclass(frozen=True)
class Charging:
    """What a bank takes; all but ``most`` broadcast to (options, years).

    ``full`` [J] is above its floor, ``most`` [J an hour] by day, (days, options, years).
    ``taper`` is the share of the room left that an hour can fill, ``efficiency`` the share of
    what goes in at the terminals that comes out again.
    """

    full: Array
    most: Array
    taper: Array
    efficiency: Array


@dataclass(frozen=True)
class Machine:
    """A charging machine: ``power`` [J an hour], started and stopped at a charge [J]."""

    power: Array
    start: Array
    stop: Array


@dataclass(frozen=True)
class Course:
    """What became of the flows, hour by hour [J], (hours, options, years); one state more.

    state(t+1) - state(t) = own - spilled + plug + machine - load + unserved - lost
    """

    state: Array  # above the floor
    plug: Array
    machine: Array
    spilled: Array
    unserved: Array
    lost: Array


def charge_course(
    flows: Flows,
    charging: Charging,
    start: Array,
    machine: Machine | None,
    hooks: Mapping[int, Hook],
) -> Course:
    """Step a bank through the hours, its charge held between its floor and full.

    x = own + plug + machine - load;  y = min(x, e x): what goes in loses a share
    s(t+1) = max(s + min(y, most, taper (full - s)), 0)

    Args:
        flows: of every hour [J]
        charging: what the bank takes
        start: s of the first hour, (options, years) [J]
        machine: one that runs by the charge, but not on a plug
        hooks: by hour, called with s before it begins, to return an hour [-]: up to that one
            the call may have raised the loads

    Returns:
        the course of every flow [J]

    Valid: steps of an hour, in which the limits hold as at its beginning
    Source: practice, balance of a store
    """
    hours, shape = flows.own.shape[0], flows.own.shape[1:]
    state = np.empty((hours + 1, *shape))
    state[0] = start
    if machine is not None:
        ran = np.zeros_like(flows.own)
        _with_machine(state, ran, flows, charging, machine, hooks)
        return _course(flows, charging, state, ran)
    net = _arriving(flows, charging, slice(0, hours))
    for first, last in itertools.pairwise(sorted({0, hours, *hooks})):
        if first in hooks:
            rows = slice(first, hooks[first](state[first]))
            net[rows] = _arriving(flows, charging, rows)
        _hours(state[first : last + 1], net[first:last], charging)
    return _course(flows, charging, state, None)


def _arriving(flows: Flows, charging: Charging, rows: slice) -> Array:
    """What of each hour's balance arrives in the bank, but for the room there is."""
    net = flows.own[rows] + flows.plug[rows]
    net -= flows.load[rows]
    np.minimum(net, net * charging.efficiency, out=net)
    day = np.arange(rows.start, rows.start + len(net)) // 24
    for number in range(day[0], day[-1] + 1) if len(net) else ():
        part = net[max(number * 24 - rows.start, 0) : (number + 1) * 24 - rows.start]
        np.minimum(part, charging.most[number], out=part)
    return net


def _hours(state: Array, net: Array, charging: Charging) -> None:
    """Hours without a decision: few calls in each, into arrays that are there already."""
    shape = state.shape[1:]
    full = np.broadcast_to(charging.full, shape).copy()
    taper = np.broadcast_to(charging.taper, shape).copy()
    add, minimum, maximum, empty = np.add, np.minimum, np.maximum, np.zeros(shape)
    if (taper >= 1.0).all():
        for before, after, row in zip(state, state[1:], net, strict=False):
            add(before, row, out=after)
            minimum(after, full, out=after)
            maximum(after, empty, out=after)
        return
    room = np.empty(shape)
    for before, after, row in zip(state, state[1:], net, strict=False):
        np.subtract(full, before, out=room)
        np.multiply(room, taper, out=room)
        minimum(room, row, out=room)
        add(before, room, out=after)
        maximum(after, empty, out=after)


def _with_machine(
    state: Array,
    ran: Array,
    flows: Flows,
    charging: Charging,
    machine: Machine,
    hooks: Mapping[int, Hook],
) -> None:
    """The same with a machine, whose start and stop hang on the charge of the hour."""
    shape = state.shape[1:]
    full, taper, share, power, start, stop = (
        np.broadcast_to(part, shape).copy()
        for part in (
            charging.full, charging.taper, charging.efficiency,
            machine.power, machine.start, machine.stop,
        )
    )  # fmt: skip
    free = flows.plug <= 0.0
    net = flows.own + flows.plug - flows.load
    going, low = np.zeros(shape, dtype=bool), np.empty(shape, dtype=bool)
    room, row, empty = np.empty(shape), np.empty(shape), np.zeros(shape)
    for hour, (before, after, given, gives, unplugged) in enumerate(
        zip(state, state[1:], net, ran, free, strict=False)
    ):
        if hour in hooks:
            rows = slice(hour, hooks[hour](before))
            net[rows] = flows.own[rows] + flows.plug[rows] - flows.load[rows]
        np.less(before, start, out=low)
        np.logical_or(going, low, out=going)
        np.less(before, stop, out=low)
        np.logical_and(going, low, out=going)
        np.logical_and(going, unplugged, out=going)
        np.multiply(going, power, out=gives)
        np.add(given, gives, out=row)
        np.multiply(row, share, out=room)
        np.minimum(row, room, out=row)
        np.subtract(full, before, out=room)
        np.multiply(room, taper, out=room)
        np.minimum(room, charging.most[hour // 24], out=room)
        np.minimum(row, room, out=row)
        np.add(before, row, out=after)
        np.maximum(after, empty, out=after)


def _course(flows: Flows, charging: Charging, state: Array, ran: Array | None) -> Course:
    """Where each flow went: room is given to what comes of itself, then machine, then plug."""
    moved = np.diff(state, axis=0)
    machine = np.zeros((1, 1, 1)) if ran is None else ran
    offered = flows.own + flows.plug + machine - flows.load
    filling = offered > 0.0
    taken = np.where(filling, moved / charging.efficiency, moved)
    surplus = np.where(filling, np.maximum(offered - taken, 0.0), 0.0)
    plug = np.maximum(flows.plug - surplus, 0.0)
    surplus = np.maximum(surplus - (flows.plug - plug), 0.0)
    kept = np.maximum(machine - surplus, 0.0)
    surplus = surplus - (machine - kept)
    return Course(
        state=state,
        plug=plug,
        machine=kept,
        spilled=np.maximum(surplus, 0.0),
        unserved=np.where(filling, 0.0, np.maximum(moved - offered, 0.0)),
        lost=taken - np.where(filling, moved, taken),
    )
