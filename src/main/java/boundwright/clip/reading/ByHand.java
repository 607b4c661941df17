package boundwright.clip.reading;

import boundwright.clip.contact.Contact;
import boundwright.clip.contact.ContactFinder;
import boundwright.clip.track.Sides;
import boundwright.clip.track.Track;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What the coach put right, applied where it belongs. */
final class ByHand {
  /** A time set on a single frame is off by up to half a frame: this share of it as standard deviation, 1 / sqrt 12. */
  private static final double HALF_FRAME = 0.2887;

  private final List<Correction> all;

  ByHand(List<Correction> all) {
    this.all = all;
  }

  Sides.Resolved sides(Sides.Resolved sides) {
    Sides.Resolved out = sides;
    for (Correction c : all) {
      if (c instanceof Correction.ExchangeLegs e) {
        out = out.exchangedLegs(e.from_s(), e.to_s());
      }
    }
    return out;
  }

  Track points(Track track) {
    Track.Builder out = track.edit();
    for (Correction c : all) {
      if (c instanceof Correction.MovePoint m) {
        if (m.frame() < 0 || m.frame() >= track.frames()) {
          throw new RefusedException(
              String.format(
                  Locale.ROOT, "Frame %d is not in the clip: its frames are 1 to %d. Step to the frame and place the point again.",
                  m.frame() + 1, track.frames()));
        }
        out.put(m.point(), m.frame(), m.picture(), 1);
      }
    }
    return out.build();
  }

  /** A contact and whether a hand set it. */
  record Marked(Contact contact, boolean fromHand) {}

  /** The contacts as found and corrected, in order. */
  List<Marked> contacts(ContactFinder finder, Track metres) {
    List<Contact> out = new ArrayList<>(finder.find());
    List<Boolean> hand = new ArrayList<>(Collections.nCopies(out.size(), false));
    for (Correction c : all) {
      if (c instanceof Correction.AddContact a) {
        inOrder(a.touchdown_s(), a.toeOff_s());
        out.add(finder.given(a.foot(), onFrame(a.touchdown_s(), metres), onFrame(a.toeOff_s(), metres), 1));
        hand.add(true);
      } else if (c instanceof Correction.DropContact d) {
        int i = at(out, d.contact_s());
        out.remove(i);
        hand.remove(i);
      } else if (c instanceof Correction.Touchdown t) {
        int i = at(out, t.contact_s());
        Contact was = out.get(i);
        out.set(i, timed(was, onFrame(t.touchdown_s(), metres), was.toeOff_s(), finder));
        hand.set(i, true);
      } else if (c instanceof Correction.ToeOff t) {
        int i = at(out, t.contact_s());
        Contact was = out.get(i);
        out.set(i, timed(was, was.touchdown_s(), onFrame(t.toeOff_s(), metres), finder));
        hand.set(i, true);
      }
    }
    List<Marked> marked = new ArrayList<>();
    for (int i = 0; i < out.size(); i++) {
      marked.add(new Marked(out.get(i), hand.get(i)));
    }
    marked.sort(Comparator.comparingDouble(m -> m.contact.middle_s()));
    return marked;
  }

  private static Contact timed(Contact was, @Nullable Estimate down, @Nullable Estimate up, ContactFinder finder) {
    if (down != null && up != null) {
      inOrder(down.p50(), up.p50());
    }
    if (was.bothFeet()) {
      return new Contact(was.foot(), down, up, was.place_m(), was.heel_m(), true, was.footSure());
    }
    return finder.given(was.foot(), down, up, was.footSure());
  }

  private static void inOrder(double down, double up) {
    if (!(up > down)) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "A contact cannot end at %.3f s when it begins at %.3f s. Set the touchdown before the toe-off.", up, down));
    }
  }

  private static Estimate onFrame(double time, Track track) {
    double last = track.time(track.frames() - 1);
    if (!(time >= track.time(0) && time <= last)) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "The time %.3f s is not in the clip, which goes from %.3f s to %.3f s. Step to a frame of the clip and set it there.",
              time, track.time(0), last));
    }
    return Estimate.normal(time, HALF_FRAME * track.medianStep());
  }

  /** The contact that holds a time, or the one whose middle is nearest within 0.15 s. */
  private static int at(List<Contact> contacts, double time) {
    int best = -1;
    double nearest = 0.15;
    for (int i = 0; i < contacts.size(); i++) {
      double off = Math.abs(contacts.get(i).middle_s() - time);
      if (off < nearest) {
        nearest = off;
        best = i;
      }
    }
    if (best < 0) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "There is no contact at %.3f s. Step to the contact, or add one there with its touchdown and toe-off.", time));
    }
    return best;
  }
}
