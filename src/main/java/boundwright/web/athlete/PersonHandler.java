package boundwright.web.athlete;

import boundwright.athlete.Athlete;
import boundwright.athlete.person.Consent;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.Scope;
import boundwright.athlete.person.Sex;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.function.Consumer;

/** Birth date and consent of an athlete, on the page of what is kept of them. */
public final class PersonHandler {
  private final Workbench bench;
  private final EditHandler page;

  /** Its forms stand on this page. */
  public PersonHandler(Workbench bench, EditHandler page) {
    this.bench = bench;
    this.page = page;
  }

  /** Keeps the birth date. */
  public void keep(Context ctx) {
    change(
        ctx,
        "person",
        a -> {
          String born = Form.text(ctx, "born");
          String sex = Form.text(ctx, "sex");
          bench.people().keep(a.id(), new Person(born.isEmpty() ? null : Form.anyDate(born), sex.isEmpty() ? null : Form.oneOf(Sex.class, "sex", sex)));
        });
  }

  /** Keeps what was said. */
  public void say(Context ctx) {
    change(
        ctx,
        "consent",
        a -> {
          String until = Form.text(ctx, "until");
          LocalDate on = Form.date(Form.text(ctx, "on"), LocalDate.now(bench.clock()));
          bench.people().say(
              new Consent(
                  0, a.id(), scope(ctx), Form.text(ctx, "may").equals("yes"), on, Form.text(ctx, "by"), until.isEmpty() ? null : Form.anyDate(until), null));
        });
  }

  /** Takes a yes back. */
  public void withdraw(Context ctx) {
    change(ctx, "consent", a -> bench.people().withdraw(a, scope(ctx)));
  }

  private static Scope scope(Context ctx) {
    return Form.oneOf(Scope.class, "matter", Form.text(ctx, "scope"));
  }

  private void change(Context ctx, String form, Consumer<Athlete> change) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    try {
      change.accept(athlete);
      ctx.redirect("/athlete/" + athlete.id() + "/edit?said=person#person-head", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      page.show(ctx, 422, athlete, form, String.valueOf(e.getMessage()), "");
    }
  }
}
