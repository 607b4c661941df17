"""The network: body points of a clip, sampled 40 times a step, to which foot stands and whether the legs are exchanged.

The same numbers are worked out in Java (boundwright.clip.contact.net); a change here is a change there. See README.md.
"""
import torch
import torch.nn as nn
import torch.nn.functional as F

PER_STEP = 40
CHANNELS = 56
DILATIONS = (1, 2, 4, 8, 16, 24, 4, 2, 1)
# nose, then left and right of: shoulder 1 2, elbow 3 4, wrist 5 6, hip 7 8, knee 9 10, ankle 11 12, heel 13 14, toe 15 16
INPUTS = 34 + 16 + 12 + 2 + 4 + 1 + 1 + 1


def masked_median(x, mask):
    return torch.where(mask, x, torch.full_like(x, float("nan"))).nanmedian(dim=1).values


def rate(x, mask):
    """Change a quarter step, by central differences; 0 at the ends."""
    v = torch.zeros_like(x)
    v[:, 1:-1] = (x[:, 2:] - x[:, :-2]) / 2 * (PER_STEP / 4)
    ok = torch.zeros_like(mask)
    ok[:, 1:-1] = mask[:, 2:] & mask[:, 1:-1] & mask[:, :-2]
    return v * ok.reshape(ok.shape + (1,) * (x.dim() - 2))


def rolling_mean(x, mask, wide):
    m = mask.to(x)
    total = F.avg_pool1d((x * m)[:, None], wide, 1, wide // 2)
    return (total / F.avg_pool1d(m[:, None], wide, 1, wide // 2).clamp(min=1e-3))[:, 0]


def features(points, mask, density):
    """points [clip, sample, 17, 2] with y up in any unit; mask [clip, sample]; density [clip] log of the film's frames a sample."""
    b, t = mask.shape
    middle = lambda j: (points[:, :, j] + points[:, :, j + 1]) / 2
    far = lambda a, c: (points[:, :, a] - points[:, :, c]).norm(dim=-1)
    leg = torch.maximum(far(7, 9) + far(9, 11), far(8, 10) + far(10, 12))
    size = masked_median((middle(1) - middle(7)).norm(dim=-1) + leg, mask)
    points = points / size[:, None, None, None]
    face = masked_median(points[:, :, 15, 0] - points[:, :, 13, 0] + points[:, :, 16, 0] - points[:, :, 14, 0], mask)
    way = torch.where(face < 0, -1.0, 1.0)
    points = points * torch.stack([way, torch.ones_like(way)], -1)[:, None, None, :]
    hip = (points[:, :, 7] + points[:, :, 8]) / 2
    body = points - hip[:, :, None]
    feet = points[:, :, 13:17, 1]
    wide = 2 * PER_STEP + 1
    lowest = torch.where(mask, feet.min(-1).values, torch.full_like(feet[:, :, 0], 1e4))
    lowest = -F.max_pool1d(-lowest[:, None], wide, 1, wide // 2)[:, 0]
    ground = rolling_mean(torch.where(mask, lowest, torch.zeros_like(lowest)), mask, PER_STEP + 1)
    height = (feet - ground[..., None]).clamp(-0.3, 1.2) * 3
    bob = (hip[:, :, 1] - rolling_mean(hip[:, :, 1], mask, wide)) * 5
    parts = [
        body.reshape(b, t, -1) * 1.5,
        rate(body[:, :, 9:17], mask).reshape(b, t, -1),
        rate(points[:, :, 11:17], mask).clamp(-4, 4).reshape(b, t, -1) * 0.5,
        rate(hip, mask),
        height,
        bob[..., None].clamp(-2, 2),
        density[:, None, None].expand(b, t, 1),
        torch.ones(b, t, 1, device=points.device),
    ]
    return (torch.cat(parts, -1) * mask[..., None].to(points)).clamp(-6, 6).transpose(1, 2)


class Block(nn.Module):
    def __init__(self, channels, dilation):
        super().__init__()
        self.norm = nn.BatchNorm1d(channels)
        self.wide = nn.Conv1d(channels, channels, 5, padding=2 * dilation, dilation=dilation)
        self.mix = nn.Conv1d(channels, channels, 1)

    def forward(self, x, mask):
        return x + self.mix(F.relu(self.wide(self.norm(x) * mask)))


class Net(nn.Module):
    """Left stands, right stands, legs exchanged, as logits for every sample."""

    def __init__(self):
        super().__init__()
        self.enter = nn.Conv1d(INPUTS, CHANNELS, 5, padding=2)
        self.blocks = nn.ModuleList([Block(CHANNELS, d) for d in DILATIONS])
        self.norm = nn.BatchNorm1d(CHANNELS)
        self.leave = nn.Conv1d(CHANNELS, 3, 1)

    def forward(self, x, mask):
        m = mask[:, None].to(x)
        x = self.enter(x)
        for block in self.blocks:
            x = block(x, m)
        return self.leave(F.relu(self.norm(x)))


def mirrored(points):
    """Left and right renamed."""
    swap = [0, 2, 1, 4, 3, 6, 5, 8, 7, 10, 9, 12, 11, 14, 13, 16, 15]
    return points[:, :, swap]


def answer(net, points, mask, density):
    """Mean of the logits of the plain and the renamed clip, what the program uses."""
    plain = net(features(points, mask, density), mask)
    other = net(features(mirrored(points), mask, density), mask)
    return 0.5 * (plain + other[:, [1, 0, 2]])


def folded(net):
    """Weights for the program, in order, the normalisation folded into a scale and a shift: float32 arrays."""
    net.eval()
    def norm(n):
        scale = n.weight / torch.sqrt(n.running_var + n.eps)
        return [scale, n.bias - n.running_mean * scale]
    out = [net.enter.weight, net.enter.bias]
    for block in net.blocks:
        out += norm(block.norm) + [block.wide.weight, block.wide.bias, block.mix.weight, block.mix.bias]
    out += norm(net.norm) + [net.leave.weight, net.leave.bias]
    return [o.detach().float().cpu().numpy() for o in out]
