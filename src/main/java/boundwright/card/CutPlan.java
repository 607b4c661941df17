package boundwright.card;

import boundwright.footfall.Foot;
import boundwright.footfall.LegBalance;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The plan of the day as it is done: long sequences cut into sets, and sets mirrored so that the legs share the session.
 *
 * @param drills in order
 * @param right contacts on the right over the session
 * @param left contacts on the left over the session
 */
record CutPlan(List<CutDrill> drills, int right, int left) {
  /** Takes a copy. */
  CutPlan {
    drills = List.copyOf(drills);
  }

  /**
   * A drill as it is done.
   *
   * @param number 1 for the first of the day
   * @param drill as the coach wrote it
   * @param pieces what it was cut into; the sequence itself if it is short enough
   * @param sets every set in order
   */
  record CutDrill(int number, Drill drill, List<Sequence> pieces, List<LegBalance.ProposedSet> sets) {
    boolean isCut() {
      return pieces.size() > 1;
    }

    int contacts(Foot foot) {
      return drill.reps() * sets.stream().mapToInt(s -> s.sequence().count(foot)).sum();
    }

    /** The sequences that are done, each once, those as written before mirrored ones. */
    List<LegBalance.ProposedSet> variants() {
      List<LegBalance.ProposedSet> out = new ArrayList<>();
      Stream.concat(sets.stream().filter(s -> !s.mirrored()), sets.stream().filter(LegBalance.ProposedSet::mirrored))
          .forEach(
              s -> {
                if (out.stream().noneMatch(o -> o.sequence().contacts().equals(s.sequence().contacts()))) {
                  out.add(s);
                }
              });
      return List.copyOf(out);
    }

    /** The pieces, each once. */
    List<Sequence> differentPieces() {
      List<Sequence> out = new ArrayList<>();
      for (Sequence piece : pieces) {
        if (out.stream().noneMatch(o -> o.contacts().equals(piece.contacts()))) {
          out.add(piece);
        }
      }
      return List.copyOf(out);
    }
  }

  /** Cuts at {@code setContacts} contacts and levels the legs over all sets and reps. */
  static CutPlan of(DayPlan plan, int setContacts) {
    List<Sequence> all = new ArrayList<>();
    List<Integer> reps = new ArrayList<>();
    List<List<Sequence>> pieces = new ArrayList<>();
    for (Drill drill : plan.drills()) {
      List<Sequence> cut = drill.sequence().sets(setContacts);
      pieces.add(cut);
      for (int s = 0; s < drill.sets(); s++) {
        for (Sequence piece : cut) {
          all.add(piece);
          reps.add(drill.reps());
        }
      }
    }
    LegBalance.Proposal proposal = LegBalance.propose(all, reps);
    List<CutDrill> drills = new ArrayList<>();
    int at = 0;
    for (int d = 0; d < pieces.size(); d++) {
      Drill drill = plan.drills().get(d);
      int sets = drill.sets() * pieces.get(d).size();
      drills.add(new CutDrill(d + 1, drill, pieces.get(d), proposal.sets().subList(at, at + sets)));
      at += sets;
    }
    return new CutPlan(drills, proposal.right(), proposal.left());
  }

  /** The plan whose drills are the pieces that are done as written: what tapes are laid for. */
  DayPlan asPlan(String title) {
    List<Drill> out = new ArrayList<>();
    for (CutDrill d : drills) {
      for (Sequence piece : d.differentPieces()) {
        out.add(new Drill(piece, d.drill().steps(), d.drill().sets(), d.drill().reps(), d.drill().inSand()));
      }
    }
    return new DayPlan(title, out);
  }
}
