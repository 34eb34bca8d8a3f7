package dev.slowpoint.ops.access;

import com.github.benmanes.caffeine.cache.Caffeine;
import com.github.benmanes.caffeine.cache.LoadingCache;
import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.jwk.source.RateLimitReachedException;
import com.nimbusds.jose.proc.BadJOSEException;
import com.nimbusds.jose.proc.SecurityContext;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.proc.ExpiredJWTException;
import com.nimbusds.jwt.proc.JWTProcessor;
import io.github.bucket4j.TimeMeter;
import java.text.ParseException;
import java.time.Duration;
import java.util.Arrays;
import java.util.Collection;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Knows callers by tokens that an issuer signs (RFC 9068). The client is the subject. What clients have asked of late is
 * kept for a bounded number of them: who is forgotten begins anew.
 */
final class TokenCredentials implements Credentials {

    private static final Logger LOG = LoggerFactory.getLogger(TokenCredentials.class);

    private static final int MOST_CLIENTS = 10_000;
    private static final Duration REMEMBERED = Duration.ofMinutes(10);
    private static final int LONGEST_SUBJECT = 255;
    private static final Duration BETWEEN_WARNINGS = Duration.ofMinutes(1);

    private final JWTProcessor<SecurityContext> tokens;
    private final String scope;
    private final LoadingCache<String, Account> accounts;
    private final AtomicLong warned = new AtomicLong(System.nanoTime() - BETWEEN_WARNINGS.toNanos());

    /**
     * Tokens that a processor takes, checks and all.
     *
     * @param scope that a token must have to plan
     * @param allowance of each subject
     */
    TokenCredentials(JWTProcessor<SecurityContext> tokens, String scope, Allowance allowance, TimeMeter time) {
        this.tokens = tokens;
        this.scope = scope;
        // No metrics of single subjects: their number is not known.
        this.accounts = Caffeine.newBuilder()
                .maximumSize(MOST_CLIENTS)
                .expireAfterAccess(REMEMBERED)
                .build(subject -> new Account(allowance, time, takenOn -> {}));
    }

    @Override
    public Identity of(String shown) {
        JWTClaimsSet claims;
        try {
            claims = tokens.process(shown, null);
        } catch (ParseException notAToken) {
            return new Identity.Unknown(Identity.Reason.MALFORMED);
        } catch (ExpiredJWTException expired) {
            return new Identity.Unknown(Identity.Reason.NOT_NOW);
        } catch (BadJOSEException refused) {
            return new Identity.Unknown(Identity.Reason.UNKNOWN);
        } catch (RateLimitReachedException unknownKey) {
            // Names a key that is not there, and the issuer was asked for new ones a moment ago.
            return new Identity.Unknown(Identity.Reason.UNKNOWN);
        } catch (JOSEException unreachable) {
            warn(unreachable);
            return new Identity.Undecided();
        }
        String subject = claims.getSubject();
        if (subject == null || subject.isBlank() || subject.length() > LONGEST_SUBJECT) {
            return new Identity.Unknown(Identity.Reason.MALFORMED);
        }
        return hasScope(claims)
                ? new Identity.Known(Objects.requireNonNull(accounts.get(subject)))
                : new Identity.NotAllowed(scope);
    }

    /** Now and then, not for each request: those are counted. */
    private void warn(JOSEException unreachable) {
        long now = System.nanoTime();
        long before = warned.get();
        if (now - before >= BETWEEN_WARNINGS.toNanos() && warned.compareAndSet(before, now)) {
            LOG.warn(
                    "The keys of the issuer cannot be read: {}",
                    unreachable.getClass().getSimpleName());
        }
    }

    /** In {@code scope}, words with blanks between them (RFC 8693, section 4.2), or in {@code scp}, as some issuers do. */
    private boolean hasScope(JWTClaimsSet claims) {
        return named(claims.getClaim("scope")) || named(claims.getClaim("scp"));
    }

    private boolean named(@Nullable Object claim) {
        if (claim instanceof String words) {
            return Arrays.asList(words.split(" ", -1)).contains(scope);
        }
        return claim instanceof Collection<?> words && words.contains(scope);
    }
}
