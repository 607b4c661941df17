package boundwright.store.view;

import boundwright.athlete.Athlete;
import boundwright.athlete.AthleteRepository;
import boundwright.athlete.KnownMark;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Optional;

/** A squad of one: the other athletes are not there. */
public final class SeenAthletes implements AthleteRepository {
  private final AthleteRepository all;
  private final long only;

  /** Of these one. */
  public SeenAthletes(AthleteRepository all, long only) {
    this.all = all;
    this.only = only;
  }

  @Override
  public List<Athlete> all() {
    return all.byId(only).stream().toList();
  }

  @Override
  public Optional<Athlete> byId(long id) {
    return id == only ? all.byId(id) : Optional.empty();
  }

  @Override
  public Optional<Athlete> byName(String name) {
    return all.byName(name).filter(a -> a.id() == only);
  }

  @Override
  public Athlete add(Athlete athlete) {
    throw refused();
  }

  @Override
  public void update(Athlete athlete) {
    throw refused();
  }

  @Override
  public Profile profile(Athlete athlete) {
    return all.profile(own(athlete));
  }

  @Override
  public List<Profile> profiles(List<Athlete> squad) {
    squad.forEach(this::own);
    return all.profiles(squad);
  }

  private Athlete own(Athlete athlete) {
    if (athlete.id() != only) {
      throw refused();
    }
    return athlete;
  }

  @Override
  public void addKnownMark(long athleteId, KnownMark mark) {
    throw refused();
  }

  @Override
  public void removeKnownMark(long athleteId, long markId) {
    throw refused();
  }

  @Override
  public void addRunUp(long athleteId, MeasuredRunUp runUp) {
    throw refused();
  }

  @Override
  public void removeRunUp(long athleteId, long runUpId) {
    throw refused();
  }

  @Override
  public void erase(long id) {
    throw refused();
  }

  private static RefusedException refused() {
    return new RefusedException("An athlete changes nobody's data here. Nothing was kept; tell the coach.");
  }
}
