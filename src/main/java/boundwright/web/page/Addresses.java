package boundwright.web.page;

import boundwright.athlete.Athlete;
import boundwright.store.Workbench;
import io.javalin.http.Context;
import java.util.Optional;

/** Whom an address means. */
public final class Addresses {
  private Addresses() {}

  /**
   * The athlete of the address.
   *
   * @throws Turned if there is none with its number
   */
  public static Athlete athlete(Context ctx, Workbench bench) {
    return athlete(ctx.pathParam("id"), bench);
  }

  /**
   * The athlete with the number written so.
   *
   * @throws Turned if there is none
   */
  public static Athlete athlete(String id, Workbench bench) {
    return (id.matches("\\d{1,18}") ? bench.athletes().byId(Long.parseLong(id)) : Optional.<Athlete>empty())
        .orElseThrow(() -> new Turned(404, "No athlete has the number " + id + ". Choose one from the squad."));
  }
}
