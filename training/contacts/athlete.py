"""A made-up athlete by mechanics: in flight a projectile, on the ground a smooth curve between the speeds.

Everything here is invented: sizes and speeds are judgement, wide on purpose, so that a network trained on it sees more
kinds of movement than coaches film. Lengths in metres, times in seconds, x forward, y up, z to the athlete's right.
"""
import numpy as np

RATE = 240
G = 9.81
# nose, then left and right of each joint; the order of the open motion too
NOSE, SHOULDER, ELBOW, WRIST, HIP, KNEE, ANKLE, HEEL, TOE = 0, 1, 3, 5, 7, 9, 11, 13, 15
JOINTS = 17
FOOT, HEEL_UP, TOE_UP, ANKLE_UP = 0.24, 0.030, 0.018, 0.085
LEFT, RIGHT = 0, 1


class Stance:
    """One foot on the ground from `down` to `up`, its toe at `toe_x`, landing turned by `strike` (heel first above 0)."""

    def __init__(self, rng, foot, down, up, toe_x, strike=None, leave=None):
        self.foot, self.down, self.up, self.toe_x = foot, down, up, toe_x
        u = rng.random()
        if strike is None:
            strike = rng.normal(16, 6) if u < 0.5 else rng.normal(3, 2) if u < 0.72 else rng.normal(-10, 5)
        self.strike = np.radians(strike)
        self.leave = np.radians(rng.normal(-56, 8) if leave is None else leave)
        tc = up - down
        self.flat = down + min(rng.uniform(0.03, 0.12), rng.uniform(0.2, 0.4) * tc)
        self.rise = down + max(self.flat - down, rng.uniform(0.36, 0.62) * tc)
        self.soft = rng.uniform(0.002, 0.006)
        self.sweep, self.drop = rng.normal(0.6, 0.8), -abs(rng.normal(1.9, 0.5))


def quintic(t0, p0, v0, a0, t1, p1, v1, a1, t):
    h = t1 - t0
    u = (t - t0) / h
    q1, q2 = v0 * h, 0.5 * a0 * h * h
    dp, dv, da = p1 - p0 - q1 - q2, v1 * h - q1 - 2 * q2, (a1 - a0) * h * h
    q3, q4, q5 = 10 * dp - 4 * dv + 0.5 * da, -15 * dp + 7 * dv - da, 6 * dp - 3 * dv + 0.5 * da
    return p0 + u * (q1 + u * (q2 + u * (q3 + u * (q4 + u * q5))))


def turned(pitch):
    """From heel to toe of a foot turned by `pitch` from standing."""
    dx, dy = FOOT, TOE_UP - HEEL_UP
    return dx * np.cos(pitch) - dy * np.sin(pitch), dx * np.sin(pitch) + dy * np.cos(pitch)


def ankle_to_heel(pitch):
    dx, dy = -0.055, -(ANKLE_UP - HEEL_UP)
    return dx * np.cos(pitch) - dy * np.sin(pitch), dx * np.sin(pitch) + dy * np.cos(pitch)


class Course:
    """Where the centre of mass goes, and who stands when."""

    def __init__(self):
        self.pieces = []  # (t0, t1, function of t to x and y)
        self.stances = []
        self.end = 0.0
        self.landed = None

    def add(self, t0, t1, x, y):
        self.pieces.append((t0, t1, x, y))
        self.end = t1

    def at(self, t):
        x, y = np.empty_like(t), np.empty_like(t)
        for k, (t0, t1, fx, fy) in enumerate(self.pieces):
            m = (t >= t0) & (t < t1) if k + 1 < len(self.pieces) else t >= t0
            if k == 0:
                m |= t < t0
            x[m], y[m] = fx(t[m]), fy(t[m])
        return x, y


def steps(rng, kind):
    """(foot, upward speed after it, speed after it, contact time or None) of each contact of a kind of movement."""
    f = int(rng.integers(2))
    lift = rng.uniform(0.75, 1.25)
    if kind == "run" or kind == "jog":
        v = rng.uniform(3, 9.5) if kind == "run" else rng.uniform(1.8, 3.8)
        up = (rng.uniform(0.3, 1.0) if kind == "run" else rng.uniform(0.2, 0.95))
        tc = (rng.uniform(0.7, 0.95) if kind == "run" else rng.uniform(0.5, 0.78)) / v
        return [((f + k) % 2, max(0.15, up + rng.normal(0, 0.05)), v + rng.normal(0, 0.1), tc * rng.uniform(0.95, 1.05))
                for k in range(int(rng.integers(6, 15)))]
    if kind == "skip":
        v, hop, step = rng.uniform(1.6, 4.8), rng.uniform(0.7, 1.9), rng.uniform(0.15, 0.7)
        tc = rng.uniform(0.16, 0.3)
        return [((f + k // 2) % 2, (hop if k % 2 == 0 else step) + rng.normal(0, 0.07), v, tc * rng.uniform(0.9, 1.1))
                for k in range(int(rng.integers(6, 13)))]
    if kind == "hop":
        v, up, tc = rng.uniform(1.2, 5), rng.uniform(0.7, 1.9), rng.uniform(0.16, 0.34)
        return [(f, up + rng.normal(0, 0.1), v, tc * rng.uniform(0.9, 1.1)) for _ in range(int(rng.integers(4, 9)))]
    # a run-up, then hops and bounds by one of the usual orders
    v = rng.uniform(3.8, 9.3)
    out = []
    for k in range(int(rng.integers(0, 5))):
        out.append(((f + k) % 2, rng.uniform(0.4, 1.0), v, rng.uniform(0.7, 0.9) / v))
    f = (out[-1][0] + 1) % 2 if out else f
    order = [[0, 0, 1], [0, 0, 1, 0, 0, 1], [0, 1] * 4, [0] * 6, [0, 0, 1, 1] * 2, [0, 0, 0, 1, 1, 1], [0, 1, 0]][int(rng.integers(7))]
    tied = rng.uniform(0.68, 0.95)
    for k, side in enumerate(order[: int(rng.integers(3, 9))]):
        out.append(((f + side) % 2, lift * rng.normal(1.75, 0.25), max(2.8, v - 0.25 * k + rng.normal(0, 0.15)), None if rng.random() < 0.5 else tied / v))
    return out


def build(rng, kind):
    c = Course()
    plan = steps(rng, kind)
    high, deep = rng.normal(1.0, 0.012), rng.normal(0.95, 0.014)
    if kind in ("jog", "run"):
        deep += 0.02
    t, x = 0.0, 0.0
    vx, vy = plan[0][2], -rng.uniform(0.3, 1.0)
    if kind != "walk" and rng.random() < 0.28:
        t, x, vx, vy = standing_start(rng, c, plan, high, deep)
    else:
        lead = rng.uniform(0.05, 0.25)
        x0, vx0, vy0, y0 = x, vx, vy, deep
        c.add(-lead, 0.0, lambda s, x0=x0, v=vx0: x0 + v * s, lambda s, y0=y0, v=vy0: y0 + v * s - G * s * s / 2)
    share = rng.uniform(0.4, 0.6)
    lands = kind == "bound" and rng.random() < 0.75
    for k, (foot, up, v, tc) in enumerate(plan):
        v = v if c.stances else max(v, vx - 0.5)
        if c.landed is None and vx < v - 1.2:  # after a standing start the speed grows
            v = vx + rng.uniform(0.4, 1.2)
        mean = (vx + v) / 2
        tc = tc or rng.uniform(0.74, 0.88) / mean
        tc = min(tc, 1.05 / mean, 0.42)
        travel = mean * tc
        ahead = np.clip(share * travel + rng.normal(0, 0.02), -0.05, 0.5)
        toe = x + ahead
        c.stances.append(Stance(rng, foot, t, t + tc, toe))
        a = (t, x, vx, 0, t + tc, x + travel, v, 0)
        b = (t, deep, vy, -G, t + tc, high, up, -G)
        c.add(t, t + tc, lambda s, a=a: quintic(*a, s), lambda s, b=b: quintic(*b, s))
        t, x, vx = t + tc, x + travel, v
        last = k == len(plan) - 1
        low = 0.72 if last and lands else deep
        fly = (up + np.sqrt(max(0.01, up * up + 2 * G * (high - low)))) / G
        t0, x0, v0 = t, x, vx
        c.add(t, t + fly, lambda s, t0=t0, x0=x0, v0=v0: x0 + v0 * (s - t0), lambda s, t0=t0, up=up: high + up * (s - t0) - G * (s - t0) ** 2 / 2)
        t, x, vy = t + fly, x + vx * fly, up - G * fly
    if lands:
        land(rng, c, t, x, vx, vy, low)
    return c


def standing_start(rng, c, plan, high, deep):
    """Both feet down and at rest; the rear foot leaves first, or both together; then the first contact of the plan."""
    rest, push, v = rng.uniform(0.1, 1.2), rng.uniform(0.4, 0.85), rng.uniform(1.6, 3.4)
    up, travel = rng.uniform(0.5, 1.6), 0.0
    travel = min(0.75, 0.42 * v * push)
    foot = (plan[0][0] + 1) % 2 if rng.random() < 0.6 else plan[0][0]
    t0, t1 = -push - 0.3, -0.3
    a, b = (t0, 0, 0, 0, t1, travel, v, 0), (t0, 0.96, 0, 0, t1, high, up, -G)
    c.add(t0 - rest, t0, lambda s: 0 * s, lambda s: 0.96 + 0 * s)
    c.add(t0, t1, lambda s: quintic(*a, s), lambda s: quintic(*b, s))
    apart = rng.uniform(0.0, 0.55)
    front = rng.uniform(0.05, 0.22)
    together = rng.random() < 0.25
    rear_up = t1 - rng.uniform(0, 0.02) if together else t0 + rng.uniform(0.2, 0.6) * push
    c.stances.append(Stance(rng, foot, t0 - rest - 1, t1, front + 0.1, strike=0))
    c.stances.append(Stance(rng, 1 - foot, t0 - rest - 1, rear_up, front + 0.1 - (0 if together else apart), strike=0))
    for s in c.stances:
        s.flat, s.rise = s.down + 0.01, s.up - rng.uniform(0.3, 0.8) * push * 0.7
    fly = (up + np.sqrt(max(0.01, up * up + 2 * G * (high - deep)))) / G
    c.add(t1, t1 + fly, lambda s: travel + v * (s - t1), lambda s: high + up * (s - t1) - G * (s - t1) ** 2 / 2)
    # times are moved so that the first contact of the plan follows
    return t1 + fly, travel + v * fly, v, up - G * fly


def land(rng, c, t, x, vx, vy, low):
    stop = rng.uniform(0.09, 0.16)
    c.landed = t
    toe = x + rng.uniform(0.3, 0.5) + FOOT
    off = rng.uniform(-0.015, 0.015)
    for foot in (LEFT, RIGHT):
        s = Stance(rng, foot, t + (off if foot == LEFT else -off), t + 5, toe + rng.normal(0, 0.04), strike=rng.normal(25, 6))
        s.rise = s.up - 0.1
        c.stances.append(s)
    c.add(t, t + rng.uniform(0.25, 0.8), lambda s: x + vx * stop * (1 - np.exp(-(s - t) / stop)),
          lambda s: np.maximum(0.35, low + 0.5 * vy * stop * (1 - np.exp(-(s - t) / stop))))


def walk(rng):
    c = Course()
    v, step = rng.uniform(0.7, 1.9), rng.uniform(0.45, 0.68)
    step = min(step, 0.88 / v)
    double, n, f = rng.uniform(0.08, 0.3) * step, int(rng.integers(5, 11)), int(rng.integers(2))
    high, bob = rng.normal(0.985, 0.012), rng.uniform(0.012, 0.035)
    c.add(-0.1, n * step, lambda s: v * s, lambda s: high - bob * np.cos(2 * np.pi * (s - double / 2) / step))
    for k in range(-2, n + 1):
        down = k * step
        c.stances.append(Stance(rng, (f + k) % 2, down, down + step + double, v * down + 0.45 * v * (step + double) + rng.uniform(0.08, 0.16),
                                strike=rng.normal(20, 6), leave=rng.normal(-48, 7)))
    c.end = n * step
    return c


def hermite(t, knots):
    """Through (time, value) knots, slopes from the neighbours; a knot may bring its own slope."""
    ts = np.array([k[0] for k in knots])
    p = np.array([k[1] for k in knots], float)
    v = np.empty_like(p)
    for i, k in enumerate(knots):
        a, b = max(0, i - 1), min(len(knots) - 1, i + 1)
        v[i] = k[2] if k[2] is not None else (p[b] - p[a]) / max(1e-3, ts[b] - ts[a])
    i = np.clip(np.searchsorted(ts, t) - 1, 0, len(ts) - 2)
    h = (ts[i + 1] - ts[i])[:, None]
    u = np.clip((t - ts[i])[:, None] / h, 0, 1)
    return ((2 * u**3 - 3 * u**2 + 1) * p[i] + (u**3 - 2 * u**2 + u) * h * v[i] + (3 * u**2 - 2 * u**3) * p[i + 1]
            + (u**3 - u**2) * h * v[i + 1])


def on_ground(s, t):
    """Toe x, toe y and pitch of a standing foot."""
    pitch = np.zeros_like(t)
    m = t < s.flat
    pitch[m] = quintic(s.down, s.strike, -2.5 if s.strike > 0 else 1.0, 0, s.flat, 0, 0, 0, t[m])
    m = t >= s.rise
    pitch[m] = quintic(s.rise, 0, 0, 0, s.up, s.leave, -9, 0, np.minimum(t[m], s.up))
    left = s.soft * np.exp(-np.maximum(0, t - s.down) / s.soft)
    x, y = s.toe_x - s.sweep * left, TOE_UP - s.drop * (s.soft - left) * 0 + 0 * t
    if s.strike > 0:
        fx, fy = turned(0.0)
        nx, ny = turned(pitch)
        m = t < s.rise
        x = np.where(m, s.toe_x - fx + nx - s.sweep * left, x)
        y = np.where(m, TOE_UP - fy + ny, y)
    return np.stack([x, y, pitch], 1)


def swing_keys(rng, t0, t1, others, big):
    """Knots of the ankle from the hip (dx, dy, pitch) between own toe-off and own touchdown."""
    def key(t, dx, dy, low, pitch):
        return (t, (dx, dy * big + low * (1 - big) + rng.normal(0, 0.02), np.radians(pitch)), None)

    span = t1 - t0
    inside = [s for s in others if s.down > t0 + 0.03 and s.up < t1 - 0.03]
    out = []
    if inside:
        if inside[0].down - t0 > 0.12:
            out.append(key(t0 + 0.5 * min(0.16, inside[0].down - t0), -0.42, -0.56, -0.68, -75))
        for s in inside:
            out.append(key(s.down, -0.30, -0.43, -0.64, -64))
            out.append(key((s.down + s.up) / 2, 0.0, -0.37, -0.66, -32))
            out.append(key(s.up, 0.32, -0.46, -0.68, 3))
    else:
        out.append(key(t0 + 0.25 * span, -0.36, -0.52, -0.70, -70))
        out.append(key(t0 + 0.52 * span, -0.04, -0.38, -0.72, -35))
        out.append(key(t0 + 0.78 * span, 0.32, -0.46, -0.72, 4))
    reach = min(0.15, 0.3 * (t1 - out[-1][0]))
    if t1 - out[-1][0] > 0.1:
        out.append(key(t1 - reach, 0.40, -0.52, -0.74, 8))
    return out


def foot_course(rng, course, foot, t, hip, big):
    own = sorted((s for s in course.stances if s.foot == foot), key=lambda s: s.down)
    others = sorted((s for s in course.stances if s.foot != foot), key=lambda s: s.down)
    out = np.zeros((len(t), 3))

    def hip_at(when):
        w = np.array([when])
        return np.array([np.interp(w, t, hip[:, 0])[0], np.interp(w, t, hip[:, 1])[0]])

    def relative(s, when, speed):
        g = on_ground(s, np.array([when]))[0]
        hx, hy = turned(g[2])
        ax, ay = ankle_to_heel(g[2])
        h = hip_at(when)
        e = 0.004
        hv = (hip_at(when + e) - hip_at(when - e)) / (2 * e)
        return (when, (g[0] - hx - ax - h[0], g[1] - hy - ay - h[1], g[2]), (speed[0] - hv[0], speed[1] - hv[1], speed[2]))

    edges = [None] + own + [None]
    for a, b in zip(edges[:-1], edges[1:]):
        t0 = a.up if a else min(t[0], b.down) - 0.3 if b else t[0]
        t1 = b.down if b else max(t[-1], t0) + 0.3
        if t1 <= t0 + 1e-3:
            continue
        knots = []
        if a:
            knots.append(relative(a, a.up, (0.6, 0.9, -9)))
        keys = swing_keys(rng, t0, t1, others, big)
        knots += [k for k in keys if k[0] > t0 + 0.02 and k[0] < t1 - 0.015] or keys[:1]
        if b:
            knots.append(relative(b, b.down, (b.sweep, b.drop, -2.0)))
        if len(knots) < 2:
            knots.append((knots[0][0] + 0.2, knots[0][1], None))
        m = (t > t0) & (t < t1)
        if not m.any():
            continue
        k = hermite(t[m], knots)
        hx, hy = ankle_to_heel(k[:, 2])
        fx, fy = turned(k[:, 2])
        x, y = k[:, 0] + hip[m, 0] + hx + fx, k[:, 1] + hip[m, 1] + hy + fy
        # a swinging foot clears the ground
        low = np.minimum(y - TOE_UP, y - fy - HEEL_UP)
        u = np.clip(np.minimum(t[m] - t0, t1 - t[m]) / 0.06, 0, 1)
        need = 0.045 * u * (0.4 if big < 0.15 else 1) if a and b else 0.03 * u
        y = y + np.maximum(0, need - low)
        out[m] = np.stack([x, y, k[:, 2]], 1)
    for s in own:
        m = (t >= s.down) & (t <= s.up)
        if m.any():
            out[m] = on_ground(s, t[m])
    return out


def clip(rng, kind):
    """One movement: positions [frames, 17, 3] at 240 Hz and how much of each frame the left and the right foot stand."""
    course = walk(rng) if kind == "walk" else build(rng, kind)
    first = course.pieces[0][0]
    t = np.arange(first, course.end, 1 / RATE)
    x, y = course.at(t)
    speed = np.median(np.diff(x)) * RATE
    big = float(np.clip((speed - 1.4) / 5.0 + rng.normal(0, 0.18), 0.0, 1.1))
    if kind in ("bound", "hop", "skip"):
        big = float(np.clip(big + rng.uniform(0, 0.5), 0.1, 1.1))
    if kind == "walk":
        big = 0.0
    gait = 2 * np.pi * t / rng.uniform(0.25, 0.8)
    hip = np.stack([x - 0.02 + 0.012 * rng.normal() * np.sin(gait), y - 0.07 + 0.012 * rng.normal() * np.cos(gait)], 1)
    hip[:, 1] -= rng.uniform(0, 0.03)
    pos = np.zeros((len(t), JOINTS, 3))
    thigh, shank = 0.43 * rng.uniform(0.96, 1.05), 0.43 * rng.uniform(0.95, 1.05)
    trunk, upper, fore = rng.uniform(0.46, 0.55), rng.uniform(0.27, 0.32), rng.uniform(0.24, 0.28)
    lean = np.radians(rng.normal(4 if kind != "walk" else 1, 3) + rng.normal(0, 2) * np.sin(gait / 2 + rng.uniform(0, 6)))
    if course.landed is not None:
        lean += np.radians(30) * np.clip((t - course.landed + 0.35) / 0.4, 0, 1)
    sx, sy = hip[:, 0] + trunk * np.sin(lean), hip[:, 1] + trunk * np.cos(lean)
    pos[:, NOSE] = np.stack([sx + 0.12 + 0.2 * np.sin(lean), sy + 0.22 * np.cos(lean), 0 * t], 1)
    wide, stance = rng.uniform(0.05, 0.09), rng.uniform(0.0, 0.07)
    flex, swing = np.radians(rng.uniform(60, 100) if kind != "walk" else rng.uniform(10, 35)), rng.uniform(40, 95)
    both_arms = kind in ("bound", "hop") and rng.random() < 0.3
    turn = rng.uniform(0, 0.06)
    for side in (LEFT, RIGHT):
        s = 1 if side == RIGHT else -1
        foot = foot_course(rng, course, side, t, hip, big)
        fx, fy = turned(foot[:, 2])
        heel = foot[:, :2] - np.stack([fx, fy], 1)
        ax, ay = ankle_to_heel(foot[:, 2])
        ankle = heel - np.stack([ax, ay], 1)
        d = ankle - hip
        r = np.hypot(d[:, 0], d[:, 1])
        bend = np.arccos(np.clip((thigh**2 + r**2 - shank**2) / (2 * thigh * np.maximum(r, 0.05)), -1, 1))
        reach = np.maximum(thigh, r * thigh / (thigh + shank))
        angle = np.arctan2(d[:, 0], -d[:, 1]) + bend
        knee = hip + np.stack([reach * np.sin(angle), -reach * np.cos(angle)], 1)
        for joint, at, z in ((HIP, hip, 0.09), (KNEE, knee, wide), (ANKLE, ankle, stance), (HEEL, heel, stance), (TOE, foot[:, :2], stance)):
            pos[:, joint + side, :2], pos[:, joint + side, 2] = at, s * z
        pos[:, HIP + side, 0] += np.clip(d[:, 0], -0.4, 0.4) * turn
        back = d[:, 0] if not both_arms else 0.5 * np.sin(gait)
        arm = np.convolve(np.pad(-np.radians(swing) * back / 0.6 + np.radians(8), 12, mode="edge"), np.ones(25) / 25, "valid") + lean
        px, py = sx - np.clip(d[:, 0], -0.4, 0.4) * turn, sy
        ex, ey = px + upper * np.sin(arm), py - upper * np.cos(arm)
        wx, wy = ex + fore * np.sin(arm + flex), ey - fore * np.cos(arm + flex)
        for joint, at, z in ((SHOULDER, (px, py), 0.18), (ELBOW, (ex, ey), 0.23), (WRIST, (wx, wy), 0.18)):
            pos[:, joint + side] = np.stack([at[0], at[1], s * z + 0 * t], 1)
    on = np.zeros((len(t), 2))
    for s in course.stances:
        on[:, s.foot] += np.clip(np.minimum(t + 0.5 / RATE, s.up) - np.maximum(t - 0.5 / RATE, s.down), 0, None) * RATE
    return pos.astype(np.float32), np.clip(on, 0, 1).astype(np.float32)


KINDS = ["bound", "run", "jog", "skip", "hop", "walk"]
SHARES = [0.40, 0.20, 0.15, 0.07, 0.07, 0.11]


def corpus(count, seed):
    """`count` clips of all kinds; the same for the same seed."""
    out = []
    for k in range(count):
        rng = np.random.default_rng([seed, k])
        kind = str(rng.choice(KINDS, p=SHARES))
        pos, on = clip(rng, kind)
        leg = np.linalg.norm(pos[:, HIP : HIP + 2] - pos[:, ANKLE : ANKLE + 2], axis=2).max()
        if np.isfinite(pos).all() and len(pos) > 60 and leg < 1.1:
            out.append((kind, pos, on))
    return out


if __name__ == "__main__":
    import sys, time
    t0 = time.time()
    made = corpus(int(sys.argv[1]) if len(sys.argv) > 1 else 60, 1)
    print(len(made), "clips", "%.1f s" % (time.time() - t0))
    for kind in KINDS:
        of = [m for m in made if m[0] == kind]
        if of:
            speed = [np.median(np.diff(p[:, HIP, 0])) * RATE for _, p, _ in of]
            low = [np.minimum(p[:, HEEL:, 1].min(1), 9).min() for _, p, _ in of]
            foot = [np.abs(np.diff(p[:, HEEL:, :2], axis=0)).max() * RATE for _, p, _ in of]
            leg = [np.linalg.norm(p[:, HIP] - p[:, ANKLE], axis=1).max() for _, p, _ in of]
            print(kind, len(of), "speed %.1f-%.1f lowest %.3f fastest %.0f m/s longest leg %.2f both %.2f none %.2f" % (
                min(speed), max(speed), min(low), max(foot), max(leg), np.mean([o.min(1).mean() for *_, o in of]), np.mean([1 - o.max(1).mean() for *_, o in of])))
