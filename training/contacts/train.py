"""Trains the contact network from nothing. See README.md for the one command.

  train.py --motion FILE --out FOLDER [--seconds 450] [--seeds 2] [--seed 1] [--made 2500]

Several networks are trained side by side on the same batches and one is then taught by all of them; its probabilities are
made honest by one temperature on clips set aside. Writes contacts.bin (the program's weights), contacts.pt and
example.txt (a clip with its answer, for the program's test).
"""
import argparse, math, os, struct, sys, time
import multiprocessing as mp
import numpy as np
import torch
import torch.nn.functional as F
import athlete
from film import Corpus, batch
from network import Net, answer, features, folded, mirrored

RECIPE = 2
MADE_SHARE = 0.66


def some(args):
    count, seed = args
    return athlete.corpus(count, seed)


def corpora(motion, made, seed, device):
    """Corpus to train on and one set aside: other made-up clips, and every eighth of the open motion."""
    jobs = [(50, 1000 * seed + k) for k in range(max(2, made // 50))]
    with mp.Pool(min(16, os.cpu_count() or 1)) as pool:
        clips = [c for part in pool.map(some, jobs, chunksize=1) for c in part]
    aside = max(10, len(clips) // 10)
    kept, held = [(1.0, athlete.RATE, p, on) for _, p, on in clips[aside:]], [(1.0, athlete.RATE, p, on) for _, p, on in clips[:aside]]
    share = lambda part, of: [(of * len(c[2]) / sum(len(x[2]) for x in part), *c[1:]) for c in part]
    kept, held = share(kept, MADE_SHARE), share(held, MADE_SHARE)
    if motion:
        data = np.load(motion)
        ends = np.cumsum(data["frames"])
        cut = [(1.0, 120, data["position_mm"][e - n : e].astype(np.float32) / 1000, data["contact"][e - n : e].astype(np.float32) / 255)
               for e, n in zip(ends, data["frames"]) if n > 40]
        kept += share([c for k, c in enumerate(cut) if k % 8], 1 - MADE_SHARE)
        held += share(cut[::8], 1 - MADE_SHARE)
    print("clips", len(kept), "set aside", len(held), flush=True)
    return Corpus(kept, device), Corpus(held, device)


def loss_of(net, made, taught=None):
    points, mask, density, stands, exchanged, one_leg = made
    with torch.autocast(points.device.type, torch.bfloat16, enabled=points.device.type == "cuda"):
        out = net(features(points, mask, density), mask).float()
    m = mask.float()
    goal, cross = stands.transpose(1, 2), exchanged
    if taught is not None:
        goal, cross = 0.4 * goal + 0.6 * taught[:, :2], 0.4 * cross + 0.6 * taught[:, 2]
    contact = F.binary_cross_entropy_with_logits(out[:, :2], goal, reduction="none").mean(1)
    legs = F.binary_cross_entropy_with_logits(out[:, 2], cross, reduction="none") * (1 - one_leg)
    return ((contact + 0.25 * legs) * m).sum() / m.sum(), (((out[:, :2] > 0) == (stands.transpose(1, 2) > 0.5)).all(1) * m).sum() / m.sum()


def train(corpus, nets, teachers, seconds, size, name):
    """Trains all nets on the same batches; answers the running means of their weights."""
    means = [Net().to(corpus.device) for _ in nets]
    for mean, net in zip(means, nets):
        mean.load_state_dict(net.state_dict())
    steppers = [torch.optim.AdamW(net.parameters(), 2.5e-3, weight_decay=1e-2) for net in nets]
    began, step = time.time(), 0
    while (gone := (time.time() - began) / seconds) < 1:
        made = batch(corpus, size)
        taught = None
        if teachers:
            with torch.no_grad(), torch.autocast(corpus.device, torch.bfloat16, enabled=corpus.device == "cuda"):
                taught = torch.stack([torch.sigmoid(answer(t, *made[:3]).float()) for t in teachers]).mean(0)
        for net, mean, opt in zip(nets, means, steppers):
            for group in opt.param_groups:
                group["lr"] = 2.5e-3 * min(1, step / 300) * 0.5 * (1 + math.cos(math.pi * min(1, gone))) + 1e-6
            loss, right = loss_of(net, made, taught)
            opt.zero_grad(set_to_none=True)
            loss.backward()
            torch.nn.utils.clip_grad_norm_(net.parameters(), 1.0)
            opt.step()
            with torch.no_grad():
                keep = min(0.998, 1 - 1 / (step / 10 + 1))
                for a, b in zip(mean.state_dict().values(), net.state_dict().values()):
                    a.lerp_(b, 1 - keep) if a.dtype.is_floating_point else a.copy_(b)
        step += 1
        if step % 500 == 0 or step == 20:
            print(name, step, "%.0f s" % (time.time() - began), "loss %.4f both feet right %.4f" % (loss.item(), right.item()), flush=True)
    print(name, "steps", step, flush=True)
    return [mean.eval() for mean in means]


@torch.no_grad()
def temperatures(net, held, rounds=24, size=256):
    """The factors on the logits of contacts and of exchanged legs that make the chances honest, and how honest they are."""
    torch.manual_seed(12345)
    logits, truth, on_one = [], [], []
    for _ in range(rounds):
        points, mask, density, stands, exchanged, one_leg = batch(held, size)
        out = answer(net, points, mask, density)
        logits.append(out.transpose(1, 2)[mask])
        truth.append(torch.cat([stands, exchanged[..., None]], -1)[mask])
        on_one.append(one_leg[mask] > 0)
    logits, truth, on_one = torch.cat(logits), torch.cat(truth), torch.cat(on_one)
    best = []
    for part in (slice(0, 2), slice(2, 3)):
        keep = torch.ones_like(on_one) if part.start == 0 else ~on_one
        scan = torch.linspace(0.4, 1.6, 61, device=logits.device)
        costs = [F.binary_cross_entropy_with_logits(k * logits[keep][:, part], truth[keep][:, part]).item() for k in scan]
        best.append(float(scan[int(np.argmin(costs))]))
        chance = torch.sigmoid(best[-1] * logits[keep][:, part]).flatten()
        seen = truth[keep][:, part].flatten()
        for low in (0, 0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.98):
            high = {0: 0.02, 0.02: 0.1, 0.1: 0.3, 0.3: 0.5, 0.5: 0.7, 0.7: 0.9, 0.9: 0.98, 0.98: 1.01}[low]
            m = (chance >= low) & (chance < high)
            print("said %.3f is %.3f of %d" % (chance[m].mean(), seen[m].mean(), int(m.sum())), flush=True)
    both = ((logits[:, :2] > 0) == (truth[:, :2] > 0.5)).all(1).float().mean().item()
    print("set aside: both feet right %.4f, temperatures %s" % (both, best), flush=True)
    return best


def write(net, heat, folder):
    arrays = folded(net)
    with open(os.path.join(folder, "contacts.bin"), "wb") as f:
        f.write(b"BWCN" + struct.pack(">iiff", RECIPE, sum(a.size for a in arrays), *heat))
        for a in arrays:
            f.write(a.astype(">f4").tobytes())


@torch.no_grad()
def example(net, held, folder):
    """A clip and its answer: density, then for each sample 34 numbers of the points, then 3 logits before temperatures."""
    torch.manual_seed(99)
    net = net.cpu().float()
    points, mask, density, *_ = (v.cpu() for v in batch(held, 8))
    best = int(mask.sum(1).argmax())
    points, mask, density = points[best : best + 1, :60].float(), mask[best : best + 1, :60], density[best : best + 1].float()
    points = (points * 1000).round() / 1000
    out = answer(net, points, mask, density)[0].T
    with open(os.path.join(folder, "example.txt"), "w") as f:
        f.write("%.6f\n" % density.item())
        for p, o in zip(points[0], out):
            f.write(" ".join("%.3f" % v for v in p.flatten().tolist()) + " " + " ".join("%.5f" % v for v in o.tolist()) + "\n")


def main():
    ask = argparse.ArgumentParser()
    ask.add_argument("--motion")
    ask.add_argument("--out", required=True)
    ask.add_argument("--seconds", type=float, default=450)
    ask.add_argument("--taught", type=float, default=300, help="seconds of the last training, by the others; 0 for none")
    ask.add_argument("--seeds", type=int, default=2)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--made", type=int, default=2500)
    ask.add_argument("--size", type=int, default=384)
    ask.add_argument("--teachers", nargs="*", default=[])
    a = ask.parse_args()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
    os.makedirs(a.out, exist_ok=True)
    torch.manual_seed(a.seed)
    began = time.time()
    corpus, held = corpora(a.motion, a.made, a.seed, device)
    print("data %.0f s" % (time.time() - began), "weights", sum(p.numel() for p in Net().parameters()), flush=True)
    teachers = []
    for path in a.teachers:
        net = Net().to(device)
        net.load_state_dict(torch.load(path, map_location=device))
        teachers.append(net.eval())
    if a.seeds:
        teachers += train(corpus, [Net().to(device) for _ in range(a.seeds)], [], a.seconds, a.size, "first")
        for k, net in enumerate(teachers):
            torch.save(net.state_dict(), os.path.join(a.out, "teacher%d-%d.pt" % (a.seed, k)))
    best = train(corpus, [Net().to(device)], teachers, a.taught, a.size, "taught")[0] if a.taught else teachers[-1]
    heat = temperatures(best, held)
    torch.save(best.state_dict(), os.path.join(a.out, "contacts.pt"))
    write(best, heat, a.out)
    example(best, held, a.out)


if __name__ == "__main__":
    main()
