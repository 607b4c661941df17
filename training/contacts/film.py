"""Clips as a phone and a body-point finder would give them, made anew for each batch on the accelerator.

A movement in space is filmed from the side (place, turn, tilt, roll, pan drawn), cut, sampled as densely as some film
would, and gets the finder's errors: jitter that lasts, a worse far leg, legs exchanged in clumps where they pass, both
feet on one leg, wild and missing points. Sizes are judgement, set wide; none was measured on film.
"""
import math
import torch
import torch.nn.functional as F
from network import PER_STEP

SAMPLES = 320
# jitter by joint [m]: nose, then left and right of shoulder, elbow, wrist, hip, knee, ankle, heel, toe
JITTER = [0.008] + [v for v in (0.011, 0.013, 0.018, 0.011, 0.013, 0.016, 0.018, 0.018) for _ in (0, 1)]
SWAP = [0, 2, 1, 4, 3, 6, 5, 8, 7, 10, 9, 12, 11, 14, 13, 16, 15]


class Corpus:
    """All movements in one array, each with its step period and its share of the draws."""

    def __init__(self, clips, device):
        """clips: (share, rate [Hz], positions, contact share a frame)."""
        self.device = device
        self.at = torch.cat([torch.as_tensor(c[2]) for c in clips]).to(device)
        on = torch.cat([torch.as_tensor(c[3]) for c in clips]).double()
        self.sum = torch.cat([torch.zeros(1, 2, dtype=torch.double), on.cumsum(0)]).to(device)
        self.n = torch.tensor([len(c[2]) for c in clips], device=device)
        self.first = torch.cat([torch.zeros(1, dtype=torch.long, device=device), self.n.cumsum(0)[:-1]])
        self.rate = torch.tensor([float(c[1]) for c in clips], device=device)
        self.share = torch.tensor([float(c[0]) for c in clips], device=device)
        self.period = torch.tensor([step_period(c[3], c[1]) for c in clips], device=device)


def step_period(on, rate):
    """Median time between touchdowns of either foot [s]."""
    down = sorted(i for f in (0, 1) for i in range(1, len(on)) if on[i, f] > 0.5 >= on[i - 1, f])
    gaps = sorted(b - a for a, b in zip(down, down[1:]) if (b - a) / rate > 0.12)
    return min(1.2, max(0.2, gaps[len(gaps) // 2] / rate)) if gaps else 0.5


class Draw:
    def __init__(self, device, count):
        self.device, self.count = device, count

    def even(self, a, b):
        return a + (b - a) * torch.rand(self.count, device=self.device)

    def ratio(self, a, b):
        return torch.exp(self.even(math.log(a), math.log(b)))

    def bell(self, *shape):
        return torch.randn(*shape, device=self.device)

    def chance(self, p):
        return torch.rand(self.count, device=self.device) < p

    def lasting(self, shape, tau):
        """Noise of unit size along dimension 1 that fades to 1/e in `tau` samples."""
        spectrum = torch.fft.rfft(self.bell(*shape), dim=1)
        f = torch.fft.rfftfreq(shape[1], device=self.device)
        keep = 1 / torch.sqrt(1 + (2 * math.pi * f[None] * tau[:, None]) ** 2)
        x = torch.fft.irfft(spectrum * keep.reshape(keep.shape + (1,) * (len(shape) - 2)), n=shape[1], dim=1)
        return x / (x.std(dim=1, keepdim=True) + 1e-6)


def clumps(score, share, mask):
    """The samples with the highest score, as many as the share says."""
    s = torch.where(mask, score, torch.full_like(score, -1e9))
    ordered = s.sort(dim=1, descending=True).values
    k = (share * mask.sum(1)).long().clamp(0, s.shape[1] - 1)
    return (s > ordered.gather(1, k[:, None])) & mask


def batch(corpus, count):
    """points [count, 320, 17, 2], mask, density (log of the film's frames a sample), stands [.., 2], exchanged, both feet on one leg."""
    dev, d = corpus.device, Draw(corpus.device, count)
    row = torch.arange(count, device=dev)
    which = torch.multinomial(corpus.share, count, replacement=True)
    period, n, rate = corpus.period[which], corpus.n[which].float(), corpus.rate[which]
    grid = PER_STEP * torch.exp(0.28 * d.bell(count)).clamp(0.5, 2.0)  # the step period is known only so well
    dt = period / grid
    wanted = torch.minimum((n - 4) / rate / dt, d.even(60, SAMPLES)).clamp(max=SAMPLES)
    begin = d.even(0, 1) * (n - 3 - wanted * dt * rate).clamp(min=0) / rate
    per_step = d.ratio(7, 160)  # frames of the film a step
    thin, dense = (grid / per_step).clamp(min=1.0), (per_step / grid).clamp(min=1.0)
    frame = thin[:, None] * torch.arange(SAMPLES, device=dev)[None]
    seen = frame < wanted[:, None]
    t = torch.minimum((begin[:, None] + frame * dt[:, None]) * rate[:, None], (n - 2)[:, None]).clamp(min=0)
    i, w = t.floor().long(), (t - t.floor())[..., None, None]
    at = corpus.first[which][:, None] + i
    p = corpus.at[at] * (1 - w) + corpus.at[at + 1] * w
    mirror = d.chance(0.5)
    p = torch.where(mirror[:, None, None, None], p[:, :, SWAP] * torch.tensor([1, 1, -1.0], device=dev), p)
    last = (wanted / thin).long().clamp(1, SAMPLES - 1)
    x, near = filmed(d, p, last, row)
    tau = period / (dt * thin)  # frames of the film a step, at most the grid's
    x = panned(d, x, last, tau, row)
    legs = x[:, :, 9:17].reshape(count, SAMPLES, 4, 2, 2)
    gap = (legs[:, :, 0, 0] - legs[:, :, 0, 1]).norm(dim=-1) + 0.5 * (legs[:, :, 1, 0] - legs[:, :, 1, 1]).norm(dim=-1)
    close = (gap < 0.35).float()
    x = jittered(d, x, near, tau, dense, row)
    x, one_leg = both_on_one(d, x, near, close, tau, seen)
    x, exchanged = exchanges(d, x, close, tau, seen)
    x = lost(d, x, tau, dense, seen)
    # to the grid of 40 samples a step, straight between the film's frames
    u = torch.arange(SAMPLES, device=dev)[None].float().expand(count, -1) / thin[:, None]
    j = u.floor().long().clamp(max=SAMPLES - 2)
    w = (u - j).clamp(0, 1)

    def on_grid(a):
        e = a.reshape(count, SAMPLES, -1)
        k = j[..., None].expand(-1, -1, e.shape[2])
        return (e.gather(1, k) * (1 - w[..., None]) + e.gather(1, k + 1) * w[..., None]).reshape((count, SAMPLES) + a.shape[2:])

    mask = torch.arange(SAMPLES, device=dev)[None] <= torch.minimum(wanted - 1, last.float() * thin)[:, None]
    edge = (begin[:, None] + (torch.arange(SAMPLES + 1, device=dev)[None] - 0.5) * dt[:, None]) * rate[:, None] + 0.5
    edge = torch.minimum(edge, n[:, None]).clamp(min=0)
    e0 = torch.minimum(edge.floor().long(), (n - 1).long()[:, None])
    we = (edge - e0)[..., None].double()
    at = corpus.first[which][:, None] + e0
    total = corpus.sum[at] * (1 - we) + corpus.sum[at + 1] * we
    stands = ((total[:, 1:] - total[:, :-1]) / (dt * rate)[:, None, None]).float().clamp(0, 1)
    stands = torch.where(mirror[:, None, None], stands.flip(2), stands)
    return on_grid(x), mask, torch.log(per_step / grid), stands, on_grid(exchanged.float()), on_grid(one_leg.float())


def filmed(d, p, last, row):
    """From space into the picture of a phone on one or the other side; also which leg is near (1 the right)."""
    side = torch.where(d.chance(0.5), -1.0, 1.0)
    hips = (p[:, :, 7] + p[:, :, 8]) / 2
    mid = hips[row, last // 2]
    travel = (hips[row, last] - hips[:, 0])[:, 0].abs()
    away = torch.maximum(d.ratio(5, 25), 0.65 * travel + 1)
    px = side[:, None, None] * (p[..., 0] - (mid[:, 0] + 1.2 * d.bell(d.count))[:, None, None])
    py = p[..., 1] - (mid[:, 1] + 0.1 + 0.4 * d.bell(d.count))[:, None, None]
    pz = away[:, None, None] - side[:, None, None] * p[..., 2]
    yaw = (math.radians(12) * d.bell(d.count)).clamp(-0.6, 0.6)[:, None, None]
    tilt = (math.radians(3) * d.bell(d.count))[:, None, None]
    roll = (math.radians(1.3) * d.bell(d.count))[:, None, None]
    qx, qz = yaw.cos() * px - yaw.sin() * pz, yaw.sin() * px + yaw.cos() * pz
    qy, qz = tilt.cos() * py + tilt.sin() * qz, (-tilt.sin() * py + tilt.cos() * qz).clamp(min=1.0)
    u, v = roll.cos() * qx - roll.sin() * qy, roll.sin() * qx + roll.cos() * qy
    return torch.stack([u / qz, v / qz], -1) * away[:, None, None, None], torch.where(side > 0, 1, 0)


def panned(d, x, last, tau, row):
    """Still, drifting a little, or following the athlete, with the shake of a hand."""
    count, samples = x.shape[:2]
    hips = (x[:, :, 7] + x[:, :, 8]) / 2
    pace = (hips[row, last, 0] - hips[:, 0, 0]).abs() / last
    drift = d.lasting((count, samples, 2), tau * d.even(0.5, 4)) * (pace * d.even(0, 0.2))[:, None, None] * torch.tensor([1.0, 0.3], device=x.device)
    drift = drift + (pace * 0.12 * d.bell(count))[:, None, None] * torch.tensor([1.0, 0.1], device=x.device)
    drift = drift.cumsum(1) + 0.006 * d.bell(count, samples, 2) * d.even(0, 1.5)[:, None, None]
    h = (hips + 0.02 * d.bell(count, samples, 2)).transpose(1, 2)
    calm = torch.stack([F.avg_pool1d(F.pad(h, (k // 2, k // 2), mode="replicate"), k, 1) for k in (9, 21, 41)])
    calm = calm[torch.randint(0, 3, (count,), device=x.device), row].transpose(1, 2)
    follow = -(calm - calm[:, :1]) * d.even(0.85, 1.05)[:, None, None] * torch.tensor([1.0, 0.6], device=x.device)
    mode = torch.rand(count, device=x.device)[:, None, None]
    pan = torch.where(mode < 0.33, follow + 0.3 * drift, torch.where(mode < 0.66, drift, torch.zeros_like(drift)))
    return x + pan[:, :, None]


def jittered(d, x, near, tau, dense, row):
    count, samples = x.shape[:2]
    worse = torch.ones(count, 17, device=x.device)
    far = d.even(1, 2.2)
    for joint in (7, 9, 11, 13, 15):
        worse[row, joint + 1 - near] = far
    size = torch.tensor(JITTER, device=x.device)[None] * worse * d.ratio(0.35, 2.2)[:, None]
    quick = d.bell(count, samples, 17, 2) / dense.sqrt()[:, None, None, None]
    slow = d.lasting((count, samples, 17, 2), tau * d.even(0.03, 0.2))
    share = d.even(0.3, 0.9)[:, None, None, None]
    offset = 0.012 * d.bell(count, 1, 17, 2) * d.even(0, 1)[:, None, None, None]  # a finder's joint is not quite ours
    return x + size[:, None, :, None] * (quick * (1 - share).sqrt() + slow * share.sqrt()) + offset


def both_on_one(d, x, near, close, tau, seen):
    count, samples = x.shape[:2]
    legs = x[:, :, 9:17].reshape(count, samples, 4, 2, 2)
    score = d.lasting((count, samples), tau * d.even(0.04, 0.25)) + d.even(0.5, 3)[:, None] * close
    where = clumps(score, d.even(0, 0.28) * d.chance(0.7), seen)
    loser = torch.where(d.chance(0.7), 1 - near, near)[:, None, None, None]
    # onto the other leg, or somewhere between
    share = (d.even(0.4, 1.2).clamp(max=1)[:, None] * where.float())[:, :, None, None]
    other = torch.where(loser == 0, legs[:, :, :, 1], legs[:, :, :, 0]) + 0.02 * d.bell(count, samples, 4, 2)
    left = torch.where(loser == 0, legs[:, :, :, 0] * (1 - share) + other * share, legs[:, :, :, 0])
    right = torch.where(loser == 1, legs[:, :, :, 1] * (1 - share) + other * share, legs[:, :, :, 1])
    x = torch.cat([x[:, :, :9], torch.stack([left, right], 3).reshape(count, samples, 8, 2)], 2)
    return x, where


def exchanges(d, x, close, tau, seen):
    count, samples = x.shape[:2]
    score = d.lasting((count, samples), tau * d.even(0.06, 0.6)) + d.even(0, 2.5)[:, None] * close
    share = 0.36 * torch.rand(count, device=x.device) ** 1.3 * d.chance(0.75)
    where = clumps(score, share, seen)
    turned = x[:, :, SWAP]
    hips_too = d.chance(0.5)[:, None] & where
    legs = torch.where(where[:, :, None, None], turned[:, :, 9:], x[:, :, 9:])
    hips = torch.where(hips_too[:, :, None, None], turned[:, :, 7:9], x[:, :, 7:9])
    arms_too = clumps(d.lasting((count, samples), tau * d.even(0.06, 0.5)), d.even(0, 0.15), seen)
    # arms tell little of which leg is which: jumpers swing both together, and a finder may name them wrong all through
    arms_too = arms_too ^ d.chance(0.3)[:, None]
    arms = torch.where(arms_too[:, :, None, None], turned[:, :, 1:7], x[:, :, 1:7])
    return torch.cat([x[:, :, :1], arms, hips, legs], 2), where


def lost(d, x, tau, dense, seen):
    """Wild points, and missing ones that keep their last place."""
    count, samples = x.shape[:2]
    wild = torch.rand(count, samples, 17, device=x.device) < 0.01 * d.even(0, 1.5)[:, None, None]
    x = x + wild[..., None] * 0.5 * d.bell(count, samples, 17, 2) / dense.sqrt()[:, None, None, None]
    score = d.lasting((count, samples, 17), tau * 0.1)
    flat = score.transpose(1, 2).reshape(count * 17, samples)
    share = (d.even(0, 0.08) * d.chance(0.6)).repeat_interleave(17)
    gone = clumps(flat, share, seen.repeat_interleave(17, 0)).reshape(count, 17, samples).transpose(1, 2)
    gone[:, 0] = False
    index = torch.where(gone, 0, torch.arange(samples, device=x.device)[None, :, None]).cummax(1).values
    return x.gather(1, index[..., None].expand(-1, -1, -1, 2))
