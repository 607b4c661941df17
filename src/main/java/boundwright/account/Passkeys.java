package boundwright.account;

import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import com.webauthn4j.WebAuthnManager;
import com.webauthn4j.converter.AttestedCredentialDataConverter;
import com.webauthn4j.converter.exception.DataConversionException;
import com.webauthn4j.converter.util.ObjectConverter;
import com.webauthn4j.credential.CredentialRecordImpl;
import com.webauthn4j.data.AuthenticationData;
import com.webauthn4j.data.AuthenticationParameters;
import com.webauthn4j.data.PublicKeyCredentialParameters;
import com.webauthn4j.data.PublicKeyCredentialType;
import com.webauthn4j.data.RegistrationData;
import com.webauthn4j.data.RegistrationParameters;
import com.webauthn4j.data.attestation.authenticator.AttestedCredentialData;
import com.webauthn4j.data.attestation.authenticator.AuthenticatorData;
import com.webauthn4j.data.attestation.statement.COSEAlgorithmIdentifier;
import com.webauthn4j.data.attestation.statement.NoneAttestationStatement;
import com.webauthn4j.data.client.Origin;
import com.webauthn4j.data.client.challenge.DefaultChallenge;
import com.webauthn4j.data.extension.client.AuthenticationExtensionsClientOutputs;
import com.webauthn4j.data.extension.authenticator.AuthenticationExtensionsAuthenticatorOutputs;
import com.webauthn4j.server.ServerProperty;
import com.webauthn4j.verifier.exception.VerificationException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * Lets people in by a passkey (W3C Web Authentication, level 2): the device signs a challenge for this server's name alone, and only after it
 * has made sure who holds it. What the device says of its make is not asked for.
 */
public final class Passkeys {
  /** How long a challenge waits. */
  public static final Duration CHALLENGE_LASTS = Duration.ofMinutes(5);
  private static final int CHALLENGE_BYTES = 32;
  private static final int LONGEST_NAME = 60;
  /** Reads and verifies; made when the first passkey is, as it takes a tenth of the time in which the program starts. */
  private static final class Library {
    /** Kinds of keys that every device makes one of: ES256, EdDSA, RS256 (numbers of the IANA COSE registry). */
    private static final List<PublicKeyCredentialParameters> KINDS =
        List.of(
            new PublicKeyCredentialParameters(PublicKeyCredentialType.PUBLIC_KEY, COSEAlgorithmIdentifier.ES256),
            new PublicKeyCredentialParameters(PublicKeyCredentialType.PUBLIC_KEY, COSEAlgorithmIdentifier.EdDSA),
            new PublicKeyCredentialParameters(PublicKeyCredentialType.PUBLIC_KEY, COSEAlgorithmIdentifier.RS256));
    private static final ObjectConverter CONVERTER = new ObjectConverter();
    private static final WebAuthnManager MANAGER = WebAuthnManager.createNonStrictWebAuthnManager(CONVERTER);
  }

  private final PasskeyRepository kept;
  private final Clock clock;
  private final RandomGenerator random;

  /** @param random a generator that cannot be guessed */
  public Passkeys(PasskeyRepository kept, Clock clock, RandomGenerator random) {
    this.kept = kept;
    this.clock = clock;
    this.random = random;
  }

  /**
   * Where somebody is.
   *
   * @param origin as the browser says it, {@code https://NAME:PORT}
   * @param name of the server in it; a passkey holds for this name alone, and for no number
   */
  public record Place(String origin, String name) {
    /** Whether browsers make passkeys for it: for names, not for numbers. */
    public boolean takesPasskeys() {
      return !name.matches("[0-9.]+|.*:.*");
    }
  }

  /** The passkeys of an account, oldest first. */
  public List<Passkey> of(long account) {
    return kept.of(account);
  }

  /** What a device shall sign, to log in ({@code null}) or to be added to an account: 32 bytes, Base64 for addresses. */
  public String challenge(@Nullable Long account) {
    byte[] bytes = new byte[CHALLENGE_BYTES];
    random.nextBytes(bytes);
    String text = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    Instant now = clock.instant();
    kept.ask(text, account, now, now.plus(CHALLENGE_LASTS));
    return text;
  }

  /**
   * Adds what a device made to an account.
   *
   * @param answer as the browser gives it (RegistrationResponseJSON)
   * @param name what its owner calls it
   */
  public void add(Account account, String name, String answer, Place place) {
    String called = PlainText.checked(name.strip());
    if (called.isEmpty() || called.codePointCount(0, called.length()) > LONGEST_NAME) {
      throw new RefusedException("The name of a passkey has 1 to " + LONGEST_NAME + " characters; this one has " + called.codePointCount(0, called.length()) + ". Nothing was kept.");
    }
    try {
      RegistrationData data = read(answer, Library.MANAGER::parseRegistrationResponseJSON);
      String challenge = challengeOf(Objects.requireNonNull(data.getCollectedClientData()).getChallenge().getValue());
      used(challenge, account.id());
      Library.MANAGER.verify(data, new RegistrationParameters(server(place, challenge), Library.KINDS, true, true));
      AuthenticatorData<?> made = Objects.requireNonNull(data.getAttestationObject()).getAuthenticatorData();
      AttestedCredentialData key = Objects.requireNonNull(made.getAttestedCredentialData());
      kept.add(
          new Passkey(
              challengeOf(key.getCredentialId()), account.id(), Base64.getEncoder().encodeToString(new AttestedCredentialDataConverter(Library.CONVERTER).convert(key)),
              made.getSignCount(), called, clock.instant()));
    } catch (DataConversionException | VerificationException | NullPointerException | IllegalArgumentException e) {
      throw new RefusedException("What the device answered does not hold for this page, so no passkey was kept. Try again, or keep to the password.", e);
    }
  }

  /**
   * The account whose passkey signed what was asked.
   *
   * @param answer as the browser gives it (AuthenticationResponseJSON)
   */
  public long account(String answer, Place place) {
    try {
      AuthenticationData data = read(answer, Library.MANAGER::parseAuthenticationResponseJSON);
      String challenge = challengeOf(Objects.requireNonNull(data.getCollectedClientData()).getChallenge().getValue());
      used(challenge, null);
      Passkey passkey = kept.byCredential(challengeOf(data.getCredentialId())).orElseThrow(() -> refused(null));
      Library.MANAGER.verify(data, new AuthenticationParameters(server(place, challenge), record(passkey), null, true, true));
      kept.used(passkey.credential(), Objects.requireNonNull(data.getAuthenticatorData()).getSignCount());
      return passkey.accountId();
    } catch (DataConversionException | VerificationException | NullPointerException | IllegalArgumentException e) {
      throw refused(e);
    }
  }

  /** The library's readers fail in as many ways as there are texts: whatever it is, what was sent is none. */
  private static <T> T read(String answer, Function<String, T> reader) {
    try {
      return Objects.requireNonNull(reader.apply(answer));
    } catch (RuntimeException e) {
      throw new IllegalArgumentException("not what a browser sends", e);
    }
  }

  private static RefusedException refused(@Nullable Exception e) {
    String said = "This passkey does not hold here. Try again, or log in with the password.";
    return e == null ? new RefusedException(said) : new RefusedException(said, e);
  }

  private void used(String challenge, @Nullable Long account) {
    if (!kept.answered(challenge, account, clock.instant())) {
      throw new RefusedException("The page waited longer than " + CHALLENGE_LASTS.toMinutes() + " minutes for the device, or was answered before. Reload it and try again.");
    }
  }

  /** Forgets a passkey. */
  public void remove(long account, String credential) {
    if (!kept.remove(account, credential)) {
      throw new RefusedException("This passkey is not kept any more. Reload the page.");
    }
  }

  private CredentialRecordImpl record(Passkey passkey) {
    AttestedCredentialData key = new AttestedCredentialDataConverter(Library.CONVERTER).convert(Base64.getDecoder().decode(passkey.key()));
    return new CredentialRecordImpl(
        new NoneAttestationStatement(), null, null, null, passkey.counter(), key, new AuthenticationExtensionsAuthenticatorOutputs<>(), null,
        new AuthenticationExtensionsClientOutputs<>(), Set.of());
  }

  private static ServerProperty server(Place place, String challenge) {
    return ServerProperty.builder().origin(new Origin(place.origin())).rpId(place.name()).challenge(new DefaultChallenge(challenge)).build();
  }

  private static String challengeOf(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }
}
