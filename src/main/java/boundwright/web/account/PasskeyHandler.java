package boundwright.web.account;

import boundwright.account.Accounts;
import boundwright.account.Passkeys;
import boundwright.account.Session;
import boundwright.quantity.RefusedException;
import boundwright.web.department.Department;
import boundwright.web.door.Notes;
import boundwright.web.door.Reach;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Turned;
import boundwright.web.door.Callers;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Passkeys: asking a device to sign, reading what it signed. The page's script stands between the two. */
public final class PasskeyHandler {
  /** ES256, EdDSA, RS256 (numbers of the IANA COSE registry). */
  private static final List<Integer> KINDS = List.of(-7, -8, -257);

  /** Made when somebody asks, as the first page does not need it. */
  private static final class Mapper {
    static final ObjectMapper JSON = new ObjectMapper();
  }

  private final Gate gate;
  private final Accounts accounts;
  private final Passkeys passkeys;
  private final Callers callers;
  private final Notes notes;
  private final Reach reach;
  private final Department department;

  public PasskeyHandler(Gate gate, Accounts accounts, Passkeys passkeys, Callers callers, Notes notes, Reach reach, Department department) {
    this.department = department;
    this.gate = gate;
    this.accounts = accounts;
    this.passkeys = passkeys;
    this.callers = callers;
    this.notes = notes;
    this.reach = reach;
  }

  /** Registers the routes. */
  public void add(RoutesConfig routes) {
    routes.post("/login/passkey/ask", ctx -> json(ctx, asked(ctx)));
    routes.post("/login/passkey", this::login);
    routes.post("/me/passkey/ask", ctx -> json(ctx, offered(ctx)));
    routes.post("/me/passkey", this::keep);
    routes.post("/me/passkey/remove", this::remove);
  }

  /** Where this request was sent. */
  static Passkeys.Place place(Context ctx, Reach reach) {
    String host = String.valueOf(ctx.header("Host")).toLowerCase(Locale.ROOT);
    return new Passkeys.Place((reach.isSealed(ctx.req()) ? "https://" : "http://") + host, host.replaceFirst(":\\d+$", ""));
  }

  private Map<String, Object> asked(Context ctx) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("challenge", passkeys.challenge(null));
    out.put("rpId", place(ctx, reach).name());
    out.put("userVerification", "required");
    out.put("timeout", Passkeys.CHALLENGE_LASTS.toMillis());
    return out;
  }

  private Map<String, Object> offered(Context ctx) {
    Session session = session(ctx);
    String number = Base64.getUrlEncoder().withoutPadding().encodeToString(("account " + session.account().id()).getBytes(StandardCharsets.US_ASCII));
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("challenge", passkeys.challenge(session.account().id()));
    out.put("rp", Map.of("id", place(ctx, reach).name(), "name", "boundwright"));
    out.put("user", Map.of("id", number, "name", session.account().login(), "displayName", session.account().name()));
    out.put("pubKeyCredParams", KINDS.stream().map(k -> Map.of("type", "public-key", "alg", k)).toList());
    out.put("authenticatorSelection", Map.of("residentKey", "required", "requireResidentKey", true, "userVerification", "required"));
    out.put("attestation", "none");
    out.put("excludeCredentials", passkeys.of(session.account().id()).stream().map(p -> Map.of("type", "public-key", "id", p.credential())).toList());
    out.put("timeout", Passkeys.CHALLENGE_LASTS.toMillis());
    return out;
  }

  private static void json(Context ctx, Map<String, Object> answer) throws IOException {
    ctx.contentType("application/json");
    ctx.result(Mapper.JSON.writeValueAsString(answer));
  }

  private Session session(Context ctx) {
    Session with = gate.caller(ctx).session();
    if (with == null) {
      throw new Turned(404, "Nobody is logged in here.");
    }
    return with;
  }

  private void login(Context ctx) {
    department.turnAwayFromOwnLogins();
    try {
      boolean sealed = reach.isSealed(ctx.req());
      String secret = accounts.enter(passkeys.account(Form.text(ctx, "answer"), place(ctx, reach)), sealed, LoginHandler.browser(ctx));
      callers.seat(ctx, secret);
      accounts.seat(secret, sealed).ifPresent(s -> notes.came(s.session().account(), s.membership().clubId(), "logged in with a passkey"));
    } catch (RefusedException e) {
      said(ctx, e);
      return;
    }
    ctx.status(HttpStatus.NO_CONTENT);
  }

  private void keep(Context ctx) {
    department.turnAwayFromOwnLogins();
    Session session = session(ctx);
    try {
      passkeys.add(session.account(), Form.text(ctx, "name"), Form.text(ctx, "answer"), place(ctx, reach));
    } catch (RefusedException e) {
      said(ctx, e);
      return;
    }
    gate.noted(ctx, "added a passkey", "");
    ctx.status(HttpStatus.NO_CONTENT);
  }

  private static void said(Context ctx, RefusedException e) {
    ctx.status(422);
    ctx.contentType("text/plain; charset=utf-8");
    ctx.result(String.valueOf(e.getMessage()));
  }

  private void remove(Context ctx) {
    passkeys.remove(session(ctx).account().id(), Form.text(ctx, "credential"));
    gate.noted(ctx, "removed a passkey", "");
    ctx.redirect("/me?done=passkey", HttpStatus.SEE_OTHER);
  }
}
