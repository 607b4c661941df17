"""What the program needs to train its contact network further with a coach's own clips, which it does in plain Java.

  further.py --weights contacts.bin --out FOLDER [--clips 72] [--seed 901]

Writes made-up.bin (clips of the made-up athlete that no training saw: some are rehearsed so that nothing is forgotten, the
others are read with the old and the new weights) and step.txt (loss, gradients and three steps of Adam by the framework,
in double precision, for the test of the program's own).
"""
import argparse, gzip, os, struct
import numpy as np
import torch
import torch.nn.functional as F
import athlete
from film import Corpus, batch
from network import CHANNELS, DILATIONS, INPUTS

FORM = 1


def folded(path):
    """The program's weights, normalisation folded in, each in its shape."""
    with open(path, "rb") as f:
        assert f.read(4) == b"BWCN"
        recipe, count, _, _ = struct.unpack(">iiff", f.read(16))
        flat = torch.from_numpy(np.frombuffer(f.read(), ">f4").astype(np.float64))
    assert count == len(flat)
    shapes = [(CHANNELS, INPUTS, 5), (CHANNELS,)]
    for _ in DILATIONS:
        shapes += [(CHANNELS,), (CHANNELS,), (CHANNELS, CHANNELS, 5), (CHANNELS,), (CHANNELS, CHANNELS, 1), (CHANNELS,)]
    shapes += [(CHANNELS,), (CHANNELS,), (3, CHANNELS, 1), (3,)]
    out, at = [], 0
    for s in shapes:
        n = int(np.prod(s))
        out.append(flat[at : at + n].reshape(s).clone().requires_grad_())
        at += n
    assert at == len(flat)
    return recipe, out


def forward(w, x):
    """Inputs [1, INPUTS, samples] to three logits a sample."""
    w = iter(w)
    x = F.conv1d(x, next(w), next(w), padding=2)
    for d in DILATIONS:
        h = next(w)[None, :, None] * x + next(w)[None, :, None]
        h = F.relu(F.conv1d(h, next(w), next(w), padding=2 * d, dilation=d))
        x = x + F.conv1d(h, next(w), next(w))
    x = F.relu(next(w)[None, :, None] * x + next(w)[None, :, None])
    return F.conv1d(x, next(w), next(w))[0]


def step(path, folder):
    """Inputs by a formula that the test repeats."""
    recipe, w = folded(path)
    n = 70
    c, i = torch.arange(INPUTS, dtype=torch.double)[:, None], torch.arange(n, dtype=torch.double)[None]
    x = 1.2 * torch.sin(0.37 * c + 0.11 * i + 0.013 * c * i)
    k = torch.arange(3, dtype=torch.double)[:, None]
    goal = 0.5 + 0.5 * torch.sin(0.2 * i + k)
    worth = 0.5 + 0.5 * torch.cos(0.05 * i[0])
    legs = (torch.arange(n) % 3 > 0).double()
    rate, pull = 1e-3, 0.5
    begin = [v.detach().clone() for v in w]
    adam = torch.optim.Adam(w, rate)
    with open(os.path.join(folder, "step.txt"), "w") as f:
        f.write("recipe %d\n" % recipe)
        for turn in range(3):
            out = forward(w, x[None])
            cost = F.binary_cross_entropy_with_logits(out, goal, reduction="none")
            loss = (worth * (cost[0] + cost[1]) / 2 + 0.25 * legs * cost[2]).sum() / worth.sum()
            adam.zero_grad()
            loss.backward()
            if turn == 0:
                f.write("logits %s\n" % " ".join("%.9g" % v for v in out[:, ::23].flatten().tolist()))
                for a, v in enumerate(w):
                    g = v.grad.flatten()
                    f.write("gradient %d %s\n" % (a, " ".join("%.9g" % u for u in (g.sum(), g.abs().sum(), g[0], g[len(g) // 3], g[-1]))))
            norm = torch.nn.utils.clip_grad_norm_(w, 1.0)
            f.write("loss %.12g norm %.9g\n" % (loss.item(), norm.item()))
            old = [v.detach().clone() for v in w]
            adam.step()
            with torch.no_grad():
                for v, o, b in zip(w, old, begin):
                    v -= rate * pull * (o - b)
        for a, (v, b) in enumerate(zip(w, begin)):
            m = (v.detach() - b).flatten()
            f.write("moved %d %s\n" % (a, " ".join("%.9g" % u for u in (m.sum(), m.abs().sum(), m[0], m[len(m) // 3], m[-1]))))


def made_up(folder, clips, seed):
    torch.manual_seed(seed)
    corpus = Corpus([(1.0 * len(p), athlete.RATE, p, on) for _, p, on in athlete.corpus(400, seed)], "cpu")
    kept = []
    while len(kept) < clips:
        points, mask, density, stands, exchanged, one_leg = batch(corpus, 64)
        for b in range(64):
            n = int(mask[b].sum())
            p = (points[b, :n].reshape(n, 34) * 1000).round()
            on = stands[b, :n] > 0.5
            downs = int((on[1:] & ~on[:-1]).sum())
            if n >= 140 and downs >= 3 and p.abs().max() < 30000 and len(kept) < clips:
                kept.append((density[b].item(), p.short().numpy(), torch.cat([stands[b, :n], exchanged[b, :n, None], one_leg[b, :n, None]], 1)))
    with gzip.GzipFile(os.path.join(folder, "made-up.bin"), "wb", 9, mtime=0) as f:
        f.write(b"BWMU" + struct.pack(">ii", FORM, len(kept)))
        for density, p, said in kept:
            f.write(struct.pack(">if", len(p), density))
            f.write(np.diff(p.T.astype(np.int32), axis=1, prepend=0).astype(">i2").tobytes())
            f.write((255 * said.T).round().byte().contiguous().numpy().tobytes())
    print(len(kept), "clips", sum(len(p) for _, p, _ in kept), "samples")


def main():
    ask = argparse.ArgumentParser()
    ask.add_argument("--weights", required=True)
    ask.add_argument("--out", required=True)
    ask.add_argument("--clips", type=int, default=72)
    ask.add_argument("--seed", type=int, default=901)
    a = ask.parse_args()
    os.makedirs(a.out, exist_ok=True)
    step(a.weights, a.out)
    made_up(a.out, a.clips, a.seed)


if __name__ == "__main__":
    main()
