package dev.slowpoint.api;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * Every problem and every fault the service can answer with. The codes, statuses and types are part of the contract and
 * never change; the texts may.
 */
enum ProblemCode {
    BAD_REQUEST(
            400,
            "The message is no valid HTTP request",
            "The request line, the host, a header or the encoding of the address is broken.",
            "Percent-encode the address and send one valid Host header."),
    EMPTY_BODY(400, "The body is empty", "Nothing came in the body.", "Send the request as JSON or CBOR in the body."),
    MALFORMED_BODY(
            400,
            "The body cannot be read",
            "The body is not valid JSON in UTF-8, or not valid CBOR.",
            "Check the place that is named: commas, quotes, decimal points, the end of the text."),
    TRAILING_CONTENT(
            400,
            "Something follows the body",
            "After the end of the request came more.",
            "Send exactly one JSON object or one CBOR map."),
    NESTING_TOO_DEEP(
            400,
            "The body is nested too deeply",
            "Objects and lists lie more than 20 deep inside each other.",
            "Send the members of the contract; none lies so deep."),
    LIMIT_EXCEEDED(
            400,
            "A name, text or number is too long",
            "A text of more than 1024, a name of more than 256 or a number of more than 64 characters was sent.",
            "Send the members of the contract; none is so long."),
    UNKNOWN_FIELD(
            400,
            "Unknown field",
            "The contract has no field of this name at this place. It is refused, because a field misspelt and then"
                    + " ignored would change the plan unseen.",
            "Correct the name or leave the field out."),
    DUPLICATE_FIELD(
            400,
            "Field sent twice",
            "The same name stands twice in one object, and it is not clear which value counts.",
            "Send it once."),
    MISSING_FIELD(400, "Field missing", "A required field was not sent.", "Send it."),
    NULL_VALUE(
            400,
            "Null sent",
            "A field holds null, which may stand for a sensor without a reading.",
            "Leave the field out when there is no value."),
    WRONG_TYPE(
            400,
            "Wrong type",
            "A value has another type than the contract says, for example text for a number or a number for a word.",
            "Send numbers without quotes and with a decimal point, words in quotes, true or false as such."),
    NOT_FINITE(
            400,
            "Not a finite number",
            "NaN, an infinity, or a number too large to be held was sent.",
            "Check the sensor; leave the field out when there is no reading."),
    NOT_WHOLE(400, "Not a whole number", "A fraction was sent where whole units are counted.", "Round it."),
    OUT_OF_RANGE(
            400,
            "Out of range",
            "The number lies outside what can physically be meant. The bounds are given.",
            "Check the unit at the end of the name of the field, and the sensor."),
    WRONG_NUMBER_OF_ITEMS(
            400,
            "Too few or too many items",
            "A list holds fewer or more items than it may. The bounds are given.",
            "Send so many."),
    UNKNOWN_WORD(
            400, "Unknown word", "The text is none of the words that the field takes.", "Send one of those listed."),
    WRONG_PATTERN(
            400,
            "Text of the wrong form",
            "The text is too long or holds characters that this field does not take.",
            "Send plain names as they stand in the catalogues."),
    SIZE_MISSING(
            400,
            "Size missing",
            "The shape needs a size that was not sent: thicknessMm for a slab; thicknessMm, widthMm and lengthMm, or two of"
                    + " them and massG, for a brick; diameterMm for a cylinder.",
            "Measure the piece at its thickest point and send that size."),
    SIZE_NOT_OF_SHAPE(
            400,
            "Size that the shape does not have",
            "A size was sent that the shape does not use, so the shape or the size may be wrong.",
            "Choose the shape that fits the piece, and send its sizes alone."),
    SIZES_CONTRADICT(
            400,
            "Sizes contradict each other",
            "The thickness of a brick is its smallest size, and the length of an egg its longest; those sent say otherwise.",
            "Send the smallest size of a brick as thicknessMm, and the widest diameter of an egg as diameterMm."),
    MEMBER_MISSING(
            400, "A step lacks a field", "The step needs a field that was not sent.", "Send the field that is named."),
    MEMBER_NOT_OF_STEP(
            400,
            "Field that the step does not have",
            "A field was sent that this step does not use, so the step or the field may be wrong.",
            "Choose the step that is meant, and send its fields alone."),
    TIMES_NOT_RISING(
            400,
            "Times that do not rise",
            "A reading of a log is not later than the one before it.",
            "Send readings in order of time, one at a moment."),
    FIELDS_EXCLUDE_EACH_OTHER(
            400,
            "Fields exclude each other",
            "Two fields say the same thing in two ways and could contradict each other.",
            "Send one of them."),
    ONE_OF_REQUIRED(
            400, "One of several fields is required", "None of them was sent.", "Send one of those that are named."),
    COMPANION_MISSING(
            400,
            "Companion missing",
            "A field was sent that says something only together with another.",
            "Send the other too."),
    LENGTHS_DIFFER(
            400,
            "Columns of different lengths",
            "Two columns that belong together hold different numbers of values.",
            "Send one value for each time."),
    TIMES_NOT_ASCENDING(
            400,
            "Times not ascending",
            "A time stands twice, or stands after a later one, so that it is not clear what was read when.",
            "Sort the readings by time and send each time once."),
    SUM_NOT_WHOLE(
            400,
            "The parts do not add up",
            "The percentages of the composition add up to less than 98 or more than 102.",
            "Give all six parts in percent of mass; carbohydrate is meant without fibre."),
    UNKNOWN_PARAMETER(
            400,
            "Unknown query parameter",
            "The address carries a parameter that this operation does not have.",
            "Correct its name or leave it out."),
    NOT_FOUND(404, "Nothing here", "No resource has this path.", "See /openapi.yaml for all paths."),
    METHOD_NOT_ALLOWED(
            405,
            "Method not allowed",
            "The path exists, but not with this method.",
            "Use a method of the Allow header."),
    NOT_ACCEPTABLE(
            406,
            "No such representation",
            "The Accept header asks for representations that this operation does not have.",
            "Accept application/json or application/cbor."),
    REQUEST_TIMEOUT(
            408,
            "The request came too slowly",
            "The connection stood open without the whole request arriving.",
            "Send it again.",
            true),
    BODY_TOO_LARGE(
            413,
            "The body is too large",
            "The body is longer than 64 KiB, or a log longer than 4 MiB.",
            "Send the members of the contract alone."),
    URI_TOO_LONG(414, "The address is too long", "The request line is longer than the server reads.", "Shorten it."),
    UNSUPPORTED_MEDIA_TYPE(
            415,
            "Unsupported media type",
            "The body is announced as something other than JSON or CBOR, in another encoding than UTF-8, or compressed.",
            "Send Content-Type application/json or application/cbor, uncompressed."),
    HEADERS_TOO_LARGE(
            431, "The headers are too large", "The headers are longer than the server reads.", "Send fewer headers."),

    UNKNOWN_FOOD(
            422,
            "Unknown food",
            "The parameter set has no food of this name.",
            "See /v1/foods, or describe the food by its composition."),
    MASS_DOES_NOT_FIT(
            422,
            "Mass that does not fit the sizes",
            "With the density of the food, the mass gives a size that a piece of this shape cannot have.",
            "Check the mass (in grams, of one piece) and the sizes, or measure the size and send it."),
    UNKNOWN_RULE(422, "Unknown rule", "The parameter set has no rule of this name.", "See /v1/rules."),
    UNKNOWN_PARAMETER_SET(
            422, "Unknown parameter set", "No parameter set has this version.", "See /v1/parameter-sets."),
    FORM_NOT_ALLOWED(
            422,
            "Form that the food does not come in",
            "The catalogue does not have the food in this form.",
            "See the forms of the food in /v1/foods."),
    NON_INTACT_TOO_COOL(
            422,
            "Too cool for a piece that is not intact",
            "The inside of a minced, rolled, injected or tenderised piece carries what its outside carried, and the bath"
                    + " is too cool to kill it.",
            "Take a warmer bath or an intact piece."),
    STUFFED_TOO_COOL(
            422,
            "Too cool for a stuffed piece",
            "No published time makes a stuffed piece safe below 74 C in all its parts, the stuffing too.",
            "Cook the stuffing apart, or take a bath above 74 C."),
    SPROUTS_TOO_COOL(
            422,
            "Too cool for sprouts",
            "Sprouts can carry Salmonella and E. coli, and no published time makes them safe below 74 C.",
            "Take a bath above 74 C, or boil or fry them."),
    ABOVE_BOILING_POINT(
            422,
            "Above the boiling point",
            "Water boils below this temperature at this altitude.",
            "Take a cooler bath, or correct the altitude."),
    START_NOT_BELOW_BATH(
            422,
            "Food not colder than the bath",
            "The food starts at the temperature of the bath or above, so there is nothing to heat.",
            "Check the probe and the start temperature."),
    START_TOO_WARM(
            422,
            "Food too warm at the start",
            "Raw food this warm has left the cold chain, or the reading is wrong.",
            "Check the probe. Do not eat raw food that stood warm."),
    BATH_TOO_COOL(
            422,
            "Bath too cool",
            "The bath is so cool that bacteria grow in it faster than food cooks.",
            "Send a setpoint of 38 C or more."),
    CORE_ABOVE_BATH(
            422,
            "Core above the bath",
            "The core temperature asked for is above the setpoint and can never be reached.",
            "Raise the setpoint or lower target.coreC."),
    PURPOSE_NEEDS_COOKED(
            422,
            "Only cooked food is reheated",
            "The purpose is reheat and the food is raw.",
            "Send food.condition cooked, or another purpose."),
    SETPOINT_NEEDED(
            422,
            "Setpoint needed",
            "No usual temperature is known for this food, so none can be recommended.",
            "Send surroundings.bath.setpointC or target.coreC."),
    NO_SETPOINT_FITS(
            422,
            "No setpoint fits",
            "No bath within the usual range and twelve kelvin above makes this piece safe within its texture window.",
            "Take a thinner piece, another purpose, or send a setpoint to see why."),
    ARRANGEMENT_NEEDS_FLAT(
            422,
            "Arrangement of a shape without flat faces",
            "A pile, a covered face, trapped air or a face out of the water were told of a shape that has no flat face.",
            "Describe the piece as a slab of its thickness, which is the slow side, or leave the arrangement out."),
    NO_FACE_IN_WATER(
            422,
            "No face in water",
            "One face is covered and the other is in air, so that no heat gets in.",
            "Turn the pack over or push it under."),
    CHAIN_NEEDS_FREE_PACK(
            422,
            "Steps after the bath need a free pack",
            "What follows the bath is computed only for a pack that lies free in the water.",
            "Plan the bath alone, or leave the arrangement out."),
    CHILL_NEEDS_COVERED_FACES(
            422,
            "A chill needs both faces in the medium",
            "A chill is computed only for a pack whose faces both lie in the medium.",
            "Push the pack under, or chill it in air."),
    NO_USABLE_READINGS(
            422,
            "No usable readings",
            "Fewer than two readings are left when those of a faulty sensor are taken out.",
            "Check the sensor and the unit."),
    ASPECT_NEEDS_CORE(
            422,
            "Only a log of the core shows this",
            "Waiting hot, cooling and reheating are judged at the core alone, and the log is of another place.",
            "Send a log of the core, or leave this out."),
    UNHEATED_WITHOUT_BATH(
            422,
            "No bath whose heater could be off",
            "A bath without heater follows something else than a bath.",
            "Put this step right after a bath."),
    FOUND_NOT_BELOW_BATH(
            422,
            "Water found not colder than the bath",
            "Water without heater was found at the temperature of the bath before, or above.",
            "Check the probe and the setpoint before."),
    AFTER_NOW(
            422,
            "Told of a moment later than now",
            "An event or a reading of a cook under way is later than the time that has passed since food in.",
            "Send all times in seconds from food in, and now as soFar.elapsedS."),
    EVENTS_NOT_IN_ORDER(
            422,
            "Not in order of time",
            "An event or a reading of a cook under way stands behind a later one, or an event ends before it begins.",
            "Send them in the order in which they began."),
    EVENTS_OVERLAP(
            422,
            "Events that cannot be at once",
            "Two events of a cook under way exclude each other at the same moment.",
            "End the one before the other begins."),
    WATER_UNKNOWN(
            422,
            "The water is not known well enough",
            "What an event did to the water cannot be told from what was sent.",
            "Send a log of the bath, or its volume and heater."),
    READING_IMPOSSIBLE(
            422,
            "No core can read that",
            "A reading of the core lies above all water, or below all that the piece has seen.",
            "Check the probe, the setpoint and the start temperature."),
    UNKNOWN_TEXTURE_CLASS(
            422,
            "Unknown texture class",
            "The parameter set has no texture class of this name.",
            "See textureClass in /v1/foods."),
    REQUEST_REFUSED(
            422,
            "The question cannot be answered",
            "The request is well-formed, but lies outside what the model or the safety rules can answer.",
            "See the faults, which name the reason."),

    INTERNAL_ERROR(
            500,
            "The service failed",
            "A fault of the service, not of the request. It has been logged.",
            "Report it with the value of the header Slowpoint-Incident. The same request will probably fail again."),
    NOT_IMPLEMENTED(501, "Not implemented", "The server does not know this method.", "Use GET or POST."),
    OVERLOADED(
            503,
            "Too busy",
            "More requests came than can be answered in time.",
            "Send the request again after the seconds in Retry-After.",
            true),
    VERSION_NOT_SUPPORTED(
            505, "HTTP version not supported", "The request line names another version.", "Use HTTP/1.1.");

    private final int status;
    private final String title;
    private final String cause;
    private final String remedy;
    private final boolean retryable;

    ProblemCode(int status, String title, String cause, String remedy) {
        this(status, title, cause, remedy, false);
    }

    ProblemCode(int status, String title, String cause, String remedy, boolean retryable) {
        this.status = status;
        this.title = title;
        this.cause = cause;
        this.remedy = remedy;
        this.retryable = retryable;
    }

    /** The code in kebab-case or as it stands here. */
    static Optional<ProblemCode> find(String spelled) {
        return Arrays.stream(values())
                .filter(code -> code.name().equals(spelled) || code.slug().equals(spelled))
                .findFirst();
    }

    /** What a bare HTTP status means here. */
    static ProblemCode ofStatus(int status) {
        return switch (status) {
            case 404 -> NOT_FOUND;
            case 405 -> METHOD_NOT_ALLOWED;
            case 406 -> NOT_ACCEPTABLE;
            case 408 -> REQUEST_TIMEOUT;
            case 413 -> BODY_TOO_LARGE;
            case 414 -> URI_TOO_LONG;
            case 415 -> UNSUPPORTED_MEDIA_TYPE;
            case 431 -> HEADERS_TOO_LARGE;
            case 501 -> NOT_IMPLEMENTED;
            case 503 -> OVERLOADED;
            case 505 -> VERSION_NOT_SUPPORTED;
            default -> status < 500 ? BAD_REQUEST : INTERNAL_ERROR;
        };
    }

    /** The code in kebab-case, as in its type. */
    String slug() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The path that names and explains the problem. */
    String type() {
        return "/problems/" + slug();
    }

    int status() {
        return status;
    }

    String title() {
        return title;
    }

    /** Why it happens. */
    String cause() {
        return cause;
    }

    /** What to do about it. */
    String remedy() {
        return remedy;
    }

    /** Whether the same request may succeed later. */
    boolean retryable() {
        return retryable;
    }
}
