package boundwright.web.department;

import boundwright.account.Bonds;
import boundwright.account.Identity;
import boundwright.account.Visit;
import boundwright.machine.SafeAddress;
import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.jwk.source.JWKSource;
import com.nimbusds.jose.jwk.source.JWKSourceBuilder;
import com.nimbusds.jose.proc.BadJOSEException;
import com.nimbusds.jose.proc.JWSVerificationKeySelector;
import com.nimbusds.jose.proc.SecurityContext;
import com.nimbusds.jose.util.DefaultResourceRetriever;
import com.nimbusds.oauth2.sdk.AuthorizationCode;
import com.nimbusds.oauth2.sdk.AuthorizationCodeGrant;
import com.nimbusds.oauth2.sdk.GeneralException;
import com.nimbusds.oauth2.sdk.ParseException;
import com.nimbusds.oauth2.sdk.ResponseType;
import com.nimbusds.oauth2.sdk.Scope;
import com.nimbusds.oauth2.sdk.TokenRequest;
import com.nimbusds.oauth2.sdk.TokenResponse;
import com.nimbusds.oauth2.sdk.auth.ClientAuthentication;
import com.nimbusds.oauth2.sdk.auth.ClientAuthenticationMethod;
import com.nimbusds.oauth2.sdk.auth.ClientSecretBasic;
import com.nimbusds.oauth2.sdk.auth.ClientSecretPost;
import com.nimbusds.oauth2.sdk.auth.Secret;
import com.nimbusds.oauth2.sdk.http.HTTPRequest;
import com.nimbusds.oauth2.sdk.id.ClientID;
import com.nimbusds.oauth2.sdk.id.Issuer;
import com.nimbusds.oauth2.sdk.id.State;
import com.nimbusds.oauth2.sdk.pkce.CodeChallengeMethod;
import com.nimbusds.oauth2.sdk.pkce.CodeVerifier;
import com.nimbusds.openid.connect.sdk.AuthenticationRequest;
import com.nimbusds.openid.connect.sdk.AuthenticationResponse;
import com.nimbusds.openid.connect.sdk.AuthenticationResponseParser;
import com.nimbusds.openid.connect.sdk.Nonce;
import com.nimbusds.openid.connect.sdk.OIDCTokenResponse;
import com.nimbusds.openid.connect.sdk.OIDCTokenResponseParser;
import com.nimbusds.openid.connect.sdk.claims.IDTokenClaimsSet;
import com.nimbusds.openid.connect.sdk.op.OIDCProviderMetadata;
import com.nimbusds.openid.connect.sdk.validators.IDTokenValidator;
import java.io.IOException;
import java.net.URI;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A department's server as it describes itself (OpenID Connect Discovery 1.0), and what is asked of it: the authorization code flow with PKCE
 * (RFC 7636), state and nonce. What it signs is checked by the library: issuer, audience, signature by its published keys, times, nonce. The
 * library reads the machine's clock for the times, since the server's are real ones.
 */
final class Provider {
  /** How long its answers are waited for [ms]. */
  private static final int PATIENCE_MS = 4_000;
  /** Largest set of keys that is read [bytes]. */
  private static final int MOST_KEY_BYTES = 200_000;

  private final DepartmentSetting setting;
  private final OIDCProviderMetadata described;
  private final ClientAuthentication ourselves;
  private final IDTokenValidator validator;

  private Provider(DepartmentSetting setting, OIDCProviderMetadata described) throws GeneralException, IOException {
    this.setting = setting;
    this.described = described;
    for (URI at : List.of(described.getAuthorizationEndpointURI(), described.getTokenEndpointURI(), described.getJWKSetURI())) {
      if (!SafeAddress.isSafe(at, setting.issuer().getScheme().equalsIgnoreCase("http"))) {
        throw new GeneralException("it names " + at + ", which is not over https");
      }
    }
    this.ourselves = ourselves(setting, described);
    this.validator = new IDTokenValidator(issuer(), client(), keys(described), null);
  }

  /**
   * Asks the server to describe itself.
   *
   * @throws IOException if it cannot be reached
   * @throws GeneralException if it is not what the setting says, or offers nothing that is taken here
   */
  static Provider ask(DepartmentSetting setting) throws GeneralException, IOException {
    OIDCProviderMetadata described = OIDCProviderMetadata.resolve(new Issuer(setting.issuer()), PATIENCE_MS, PATIENCE_MS);
    if (described.getAuthorizationEndpointURI() == null || described.getTokenEndpointURI() == null) {
      throw new GeneralException("it does not say where one logs in");
    }
    return new Provider(setting, described);
  }

  private Issuer issuer() {
    return new Issuer(setting.issuer());
  }

  private ClientID client() {
    return new ClientID(setting.client());
  }

  private static ClientAuthentication ourselves(DepartmentSetting setting, OIDCProviderMetadata described) throws GeneralException {
    ClientID client = new ClientID(setting.client());
    Secret secret = new Secret(setting.secret());
    List<ClientAuthenticationMethod> taken = described.getTokenEndpointAuthMethods();
    // Discovery 1.0: what a server does not say is the first
    if (taken == null || taken.contains(ClientAuthenticationMethod.CLIENT_SECRET_BASIC)) {
      return new ClientSecretBasic(client, secret);
    }
    if (taken.contains(ClientAuthenticationMethod.CLIENT_SECRET_POST)) {
      return new ClientSecretPost(client, secret);
    }
    throw new GeneralException("it takes no secret");
  }

  private static JWSVerificationKeySelector<SecurityContext> keys(OIDCProviderMetadata described) throws GeneralException, IOException {
    // by a key of its own: never unsigned, never by the secret that both know
    Set<JWSAlgorithm> taken = new LinkedHashSet<>(JWSAlgorithm.Family.RSA);
    taken.addAll(JWSAlgorithm.Family.EC);
    if (described.getIDTokenJWSAlgs() != null) {
      taken.retainAll(described.getIDTokenJWSAlgs());
    }
    if (taken.isEmpty()) {
      throw new GeneralException("it signs in no way that is taken here (RSA, elliptic curves)");
    }
    JWKSource<SecurityContext> source =
        JWKSourceBuilder.create(described.getJWKSetURI().toURL(), new DefaultResourceRetriever(PATIENCE_MS, PATIENCE_MS, MOST_KEY_BYTES)).build();
    return new JWSVerificationKeySelector<>(taken, source);
  }

  /** Where a browser is sent. Asked for is who it is, and nothing else of them. */
  URI address(Bonds.Going going, URI callback) {
    return new AuthenticationRequest.Builder(ResponseType.CODE, new Scope("openid"), client(), callback)
        .state(new State(going.state()))
        .nonce(new Nonce(going.nonce()))
        .codeChallenge(new CodeVerifier(going.verifier()), CodeChallengeMethod.S256)
        .endpointURI(described.getAuthorizationEndpointURI())
        .build()
        .toURI();
  }

  /**
   * Who is back.
   *
   * @param brought what stands in the address with which they came
   * @throws SaidNo if the server let them go without logging in
   * @throws GeneralException if what came is not an answer of this server, or it does not take its own code back
   * @throws BadJOSEException if what it signed does not hold
   */
  Identity identity(Visit visit, Map<String, List<String>> brought, URI callback)
      throws SaidNo, GeneralException, IOException, BadJOSEException, JOSEException {
    AuthenticationResponse answer = AuthenticationResponseParser.parse(callback, brought);
    // RFC 9207: who answers with another server's answer is found out
    if (answer.getIssuer() == null ? described.supportsAuthorizationResponseIssuerParam() : !answer.getIssuer().equals(issuer())) {
      throw new GeneralException("the answer is another server's");
    }
    if (!answer.indicatesSuccess()) {
      throw new SaidNo(String.valueOf(answer.toErrorResponse().getErrorObject().getCode()));
    }
    AuthorizationCode code = answer.toSuccessResponse().getAuthorizationCode();
    if (code == null) {
      throw new GeneralException("the answer has no code in it");
    }
    IDTokenClaimsSet claims = validator.validate(token(code, visit, callback).getOIDCTokens().getIDToken(), new Nonce(visit.nonce()));
    // Core 1.0, 3.1.3.7, points 3 to 5, which the library leaves to whoever calls it: meant for nobody beside us
    if (claims.getAudience().size() != 1 || (claims.getAuthorizedParty() != null && !claims.getAuthorizedParty().getValue().equals(setting.client()))) {
      throw new BadJOSEException("meant for others too");
    }
    return new Identity(claims.getIssuer().getValue(), claims.getSubject().getValue());
  }

  private OIDCTokenResponse token(AuthorizationCode code, Visit visit, URI callback) throws GeneralException, IOException {
    AuthorizationCodeGrant grant = new AuthorizationCodeGrant(code, callback, new CodeVerifier(visit.verifier()));
    HTTPRequest request = new TokenRequest.Builder(described.getTokenEndpointURI(), ourselves, grant).build().toHTTPRequest();
    request.setConnectTimeout(PATIENCE_MS);
    request.setReadTimeout(PATIENCE_MS);
    request.setFollowRedirects(false);
    TokenResponse answer = OIDCTokenResponseParser.parse(request.send());
    if (!answer.indicatesSuccess()) {
      throw new GeneralException("it did not take its code back: " + answer.toErrorResponse().getErrorObject().getCode());
    }
    OIDCTokenResponse tokens = (OIDCTokenResponse) answer.toSuccessResponse();
    if (tokens.getOIDCTokens().getIDToken() == null) {
      throw new ParseException("it does not say who came");
    }
    return tokens;
  }

  /** The server let somebody go without logging in. */
  static final class SaidNo extends Exception {
    private static final long serialVersionUID = 1L;

    /** @param code of the error, as it came */
    SaidNo(String code) {
      super(code);
    }
  }
}
