package dev.slowpoint.api;

import dev.slowpoint.plan.DisplayUnits;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.SpecVersion;
import io.swagger.v3.oas.models.examples.Example;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.oas.models.parameters.RequestBody;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import io.swagger.v3.oas.models.servers.Server;
import io.swagger.v3.oas.models.tags.Tag;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.springdoc.core.customizers.GlobalOpenApiCustomizer;
import org.springdoc.core.customizers.OperationCustomizer;
import org.springdoc.core.utils.SpringDocUtils;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.MethodParameter;
import org.springframework.core.ResolvableType;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.method.HandlerMethod;
import tools.jackson.databind.json.JsonMapper;

/**
 * What the contract says beyond what is found in the controllers: true schemas, every problem of every operation, and
 * examples that the tests run.
 */
@Configuration(proxyBeanMethods = false)
class OpenApiDocument {

    /** Version of the contract, which grows when the contract does. */
    static final String VERSION = "1.1.0";

    private static final String PROBLEM = "application/problem+json";
    private static final String BEARER = "bearer";

    /** Which operation the examples of a request record belong to. */
    private static final Map<Class<?>, String> SCENES = Map.of(
            CookPlanRequest.class,
            "cook-plan",
            ChillPlanRequest.class,
            "chill-plan",
            LogReviewRequest.class,
            "log-review",
            ReplanRequest.class,
            "replan",
            ProcessWindowRequest.class,
            "process-window",
            LoadPlanRequest.class,
            "load-plan",
            PortionSheetRequest.class,
            "portion-sheet",
            LookupTableRequest.class,
            "lookup-table");

    /** Requests that may also come as a table, with the rest in the query. */
    private static final Map<Class<?>, Class<? extends Record>> TABLES =
            Map.of(LogReviewRequest.class, LogReviewQuery.class, PortionSheetRequest.class, SheetTerms.class);

    /** Answers that are also given as a page. */
    private static final Set<Class<?>> PAGES = Set.of(LogReviewAnswer.class);

    /** What stands in the head of some answers alone. */
    private static final Map<Class<?>, List<ContractHeader>> HEADERS = Map.of(
            PortionSheetAnswer.class,
            List.of(ContractHeader.STREAM_SET, ContractHeader.STREAM_DIGEST),
            LookupTableAnswer.class,
            List.of(ContractHeader.TABLE, ContractHeader.TABLE_ERRORS, ContractHeader.TABLE_NOTICES),
            LogReviewAnswer.class,
            List.of(ContractHeader.PAGE_POLICY, ContractHeader.PAGE_REFERRER));

    /** What may be wrong with a query that has members of its own. */
    private static final Set<ProblemCode> OF_QUERIES = EnumSet.of(
            ProblemCode.MISSING_FIELD,
            ProblemCode.DUPLICATE_FIELD,
            ProblemCode.WRONG_PATTERN,
            ProblemCode.UNKNOWN_PARAMETER_SET);

    private final Examples examples;
    private final CatalogueExamples catalogueExamples;
    private final ContractText text;
    private final Sentences sentences;

    private final RecordSchemas schemas = new RecordSchemas();
    private final Map<String, ApiResponse> problems = new TreeMap<>();
    private final Schema<?> problem = schemas.answer(Problem.class);

    OpenApiDocument(Examples examples, CatalogueExamples catalogueExamples, ContractText text, Languages languages) {
        this.examples = examples;
        this.text = text;
        this.catalogueExamples = catalogueExamples;
        this.sentences = languages.english();
    }

    @Bean
    OpenAPI contract() {
        return new OpenAPI(SpecVersion.V31)
                .info(new Info()
                        .title("Slowpoint")
                        .version(VERSION)
                        .description(text.description())
                        .license(new License().name("Apache-2.0").identifier("Apache-2.0")))
                // Where the service is open, nothing has to be shown.
                .security(List.of(new SecurityRequirement(), new SecurityRequirement().addList(BEARER)))
                .servers(List.of(new Server().url("/")))
                .tags(List.of(
                        new Tag().name("catalogues").description("What requests may name and answers may carry."),
                        new Tag()
                                .name("plans")
                                .description("Questions about cooking, chilling and what was recorded; computed afresh"
                                        + " each time.")));
    }

    static {
        // Handed to an operation by the service, not sent.
        SpringDocUtils.getConfig().addRequestWrapperToIgnore(Sentences.class);
    }

    @Bean
    OperationCustomizer operations() {
        return this::describe;
    }

    @Bean
    GlobalOpenApiCustomizer components() {
        return document -> {
            Components components = new Components();
            schemas.all().forEach(components::addSchemas);
            problems.forEach(components::addResponses);
            ContractHeader.components().forEach(components::addHeaders);
            components.addSecuritySchemes(
                    BEARER,
                    new SecurityScheme()
                            .type(SecurityScheme.Type.HTTP)
                            .scheme("bearer")
                            .description("A key, or a token (RFC 9068), from whoever runs the service. Not needed where"
                                    + " the service is open."));
            document.setComponents(components);
        };
    }

    private Operation describe(Operation operation, HandlerMethod method) {
        ApiResponses responses = new ApiResponses();
        Optional<Class<? extends Record>> request = requestOf(method);
        request.ifPresent(type -> operation.setRequestBody(new RequestBody()
                .required(true)
                .content(content(schemas.request(type), examples(examples.requests(scene(type)))))));
        request.ifPresent(type -> table(type, operation));
        Class<? extends Record> answer = answerOf(method);
        Map<String, Example> answers = examples(request.map(type -> examples.answers(scene(type)))
                .orElseGet(() -> catalogueExamples
                        .of(answer)
                        .map(shown -> Map.of("shown", Wire.JSON.write(shown)))
                        .orElse(Map.of())));
        responses.addApiResponse(
                "200",
                new ApiResponse()
                        .description(answer.getAnnotation(io.swagger.v3.oas.annotations.media.Schema.class)
                                .description())
                        .content(streamed(
                                answer, pictured(method, page(answer, content(schemas.answer(answer), answers))))));
        // Accept is a matter of HTTP, not of the operation (OpenAPI 3.1.1, section 4.8.12).
        parameters(operation).removeIf(parameter -> "header".equals(parameter.getIn()));
        Optional<Class<? extends Record>> query =
                Optional.ofNullable(method.getMethodAnnotation(Queried.class)).map(Queried::value);
        query.ifPresent(type -> queried(type, operation));
        if (QueryGuard.speaks(method)) {
            language(operation);
        }
        if (request.isEmpty()) {
            operation.addParametersItem(unlessMatching());
        }
        parameters(operation).stream()
                .filter(parameter -> parameter.getSchema() == null || parameter.getDescription() == null)
                .forEach(parameter -> describe(parameter, answer));
        if (parameters(operation).isEmpty()) {
            operation.setParameters(null);
        }
        String asked = request.isPresent() ? "" : query.isPresent() ? "Query" : "Catalogue";
        boolean guarded = !isOpen(method);
        if (!guarded) {
            operation.setSecurity(List.of());
        }
        problemsOf(operation, request.isPresent(), query.isPresent(), guarded).forEach((status, codes) -> {
            String name = (status.equals("400") || status.equals("422") ? asked : "") + "Problem" + status;
            problems.computeIfAbsent(name, unknown -> problem(codes));
            responses.addApiResponse(status, new ApiResponse().$ref(name));
        });
        headers(responses, answer, method, request.isPresent());
        operation.setResponses(responses);
        retire(operation, method);
        return operation;
    }

    /** What stands in the head of an answer that is no problem; the components of problems tell of theirs. */
    private static void headers(
            ApiResponses responses, Class<? extends Record> answer, HandlerMethod method, boolean computed) {
        ApiResponse done = Objects.requireNonNull(responses.get("200"));
        List<ContractHeader> headers = new ArrayList<>(List.of(ContractHeader.VARY, ContractHeader.NOSNIFF));
        if (QueryGuard.speaks(method)) {
            headers.add(ContractHeader.LANGUAGE);
        }
        if (computed) {
            headers.add(ContractHeader.NO_STORE);
            headers.addAll(HEADERS.getOrDefault(answer, List.of()));
            // Each of these operations lets a request pin a parameter set, which may be going.
            headers.addAll(ContractHeader.OF_DEPRECATED);
        } else {
            headers.add(ContractHeader.FRESH);
            headers.add(ContractHeader.TAG);
            ApiResponse unchanged = new ApiResponse().description("What the client has is what would be sent.");
            headers.forEach(header -> unchanged.addHeaderObject(header.field(), header.reference()));
            responses.addApiResponse("304", unchanged);
        }
        headers.forEach(header -> done.addHeaderObject(header.field(), header.reference()));
    }

    /** Says of an operation that is going since when, until when and where to read more; each of its answers says so too. */
    private void retire(Operation operation, HandlerMethod method) {
        Retiring retiring = method.getMethodAnnotation(Retiring.class);
        RetiringOperations.deprecation(method).ifPresent(deprecation -> {
            operation.setDeprecated(true);
            operation.setDescription(operation.getDescription() + " Deprecated since " + deprecation.since()
                    + deprecation
                            .sunset()
                            .map(day -> ", and may be gone from " + day)
                            .orElse("")
                    + ": see " + Objects.requireNonNull(retiring).see() + ".");
            operation.getResponses().replaceAll((status, response) -> {
                ApiResponse own = response.get$ref() == null ? response : copy(response.get$ref());
                ContractHeader.OF_DEPRECATED.forEach(header -> own.addHeaderObject(header.field(), header.reference()));
                return own;
            });
        });
    }

    private ApiResponse copy(String reference) {
        ApiResponse shared = Objects.requireNonNull(problems.get(reference.substring(reference.lastIndexOf('/') + 1)));
        ApiResponse copy =
                new ApiResponse().description(shared.getDescription()).content(shared.getContent());
        shared.getHeaders().forEach(copy::addHeaderObject);
        return copy;
    }

    private static Parameter unlessMatching() {
        Schema<Object> tags = new JsonSchema();
        tags.typesItem("string");
        tags.setExamples(List.of("\"6e9f36c5931cba41177c8be8\""));
        return new Parameter()
                .in("header")
                .name(HttpHeaders.IF_NONE_MATCH)
                .required(false)
                .description("The `ETag` of what the client has; answered with 304 while that is what would be sent.")
                .schema(tags);
    }

    /** What an operation without a body is asked in its query. */
    private void queried(Class<? extends Record> query, Operation operation) {
        FlatMembers.of(query)
                .parts()
                .forEach((name, part) -> operation.addParametersItem(new Parameter()
                        .in("query")
                        .name(name)
                        .required(part.required())
                        .description(part.schema().description())
                        .schema(schemas.parameter(part))));
    }

    /** The same request as a table with its other members in the query. */
    private void table(Class<?> type, Operation operation) {
        Class<? extends Record> query = TABLES.get(type);
        if (query == null) {
            return;
        }
        Content content = operation.getRequestBody().getContent();
        if (type == PortionSheetRequest.class) {
            content.addMediaType(SheetTable.MEDIA_TYPE, text(SheetTable.FORMAT, SheetTable.EXAMPLE));
            content.addMediaType(SheetStream.NDJSON_VALUE, text(SheetStream.FORMAT, SheetStream.EXAMPLE));
        } else {
            content.addMediaType(LogTable.MEDIA_TYPE, text(LogTable.FORMAT, LogTable.HEADER + "\n0,4.1\n30,4.3\n"));
        }
        FlatMembers.of(query).parts().forEach((name, part) -> {
            operation.addParametersItem(new Parameter()
                    .in("query")
                    .name(name)
                    .required(false)
                    .explode(part.list() ? false : null)
                    .description(part.schema().description() + (part.required() ? " Required" : " Only") + " with "
                            + LogTable.MEDIA_TYPE + ".")
                    .schema(schemas.parameter(part)));
        });
    }

    private static MediaType text(String description, String example) {
        Schema<Object> text = new JsonSchema();
        text.typesItem("string");
        text.setDescription(description);
        text.setExamples(List.of(example));
        return new MediaType().schema(text);
    }

    /** A sheet is answered as a stream where it comes as one. */
    private Content streamed(Class<? extends Record> answer, Content content) {
        if (answer == PortionSheetAnswer.class) {
            schemas.answer(SheetLine.class);
            content.addMediaType(
                    SheetTable.MEDIA_TYPE, text(SheetTable.ANSWER_FORMAT, SheetTable.ANSWER_HEADER + "\r\n"));
            content.addMediaType(
                    SheetStream.NDJSON_VALUE,
                    text(SheetStream.ANSWER_FORMAT, "{\"portion\":{\"id\":\"K1\",\"line\":2,\"band\":1}}\n"));
        }
        return content;
    }

    private static Content page(Class<? extends Record> answer, Content content) {
        if (PAGES.contains(answer)) {
            Schema<Object> text = new JsonSchema();
            text.typesItem("string");
            text.setDescription("The same as a page to print and sign, with a chart.");
            content.addMediaType(LogPage.MEDIA_TYPE.toString(), new MediaType().schema(text));
        }
        return content;
    }

    private static void describe(Parameter parameter, Class<? extends Record> answer) {
        Schema<Object> text = new JsonSchema();
        text.typesItem("string");
        if (parameter.getName().equals(Include.PARAMETER)) {
            text.setEnum(List.copyOf(Include.words(answer)));
            parameter
                    .description("What to answer beyond the plan itself.")
                    .explode(false)
                    .schema(new JsonSchema()
                            .typesItem("array")
                            .items(text)
                            .maxItems(Include.words(answer).size()));
        } else {
            text.setExamples(List.of(
                    parameter.getName().equals("slug")
                            ? ProblemCode.OUT_OF_RANGE.slug()
                            : RecordShape.of(answer).parts().get(0).schema().example()));
            parameter.description("As listed in the catalogue.").schema(text);
        }
    }

    /** What an answer with sentences may be asked in. */
    private static void language(Operation operation) {
        Schema<Object> units = new JsonSchema();
        units.typesItem("string");
        units.setEnum(List.copyOf(Words.constants(DisplayUnits.class).keySet()));
        units.setDefault(Words.of(DisplayUnits.METRIC));
        operation.addParametersItem(new Parameter()
                .in("query")
                .name(Languages.UNITS)
                .required(false)
                .description("Units in sentences. All other members stay as they are.")
                .schema(units));
        Schema<Object> languages = new JsonSchema();
        languages.typesItem("string");
        languages.setExamples(List.of("de-AT, de;q=0.9, fr;q=0.5"));
        operation.addParametersItem(new Parameter()
                .in("header")
                .name(HttpHeaders.ACCEPT_LANGUAGE)
                .required(false)
                .description("Languages for sentences, by lookup (RFC 4647): en, de, fr and es are spoken, English"
                        + " where none of them is asked for. All other members stay as they are.")
                .schema(languages));
    }

    private static List<Parameter> parameters(Operation operation) {
        return operation.getParameters() == null ? List.of() : operation.getParameters();
    }

    private static String scene(Class<?> type) {
        return Optional.ofNullable(SCENES.get(type)).orElseThrow();
    }

    private static Optional<Class<? extends Record>> requestOf(HandlerMethod method) {
        Reads reads = method.getMethodAnnotation(Reads.class);
        if (reads != null) {
            return Optional.of(reads.value());
        }
        return Arrays.stream(method.getMethodParameters())
                .filter(parameter ->
                        parameter.hasParameterAnnotation(org.springframework.web.bind.annotation.RequestBody.class))
                .map(MethodParameter::getParameterType)
                .<Class<? extends Record>>map(type -> type.asSubclass(Record.class))
                .findFirst();
    }

    private static Class<? extends Record> answerOf(HandlerMethod method) {
        Answers answers = method.getMethodAnnotation(Answers.class);
        return answers != null
                ? answers.value()
                : ResolvableType.forMethodParameter(method.getReturnType())
                        .as(ResponseEntity.class)
                        .getGeneric(0)
                        .toClass()
                        .asSubclass(Record.class);
    }

    private static Content content(Schema<?> schema, Map<String, Example> examples) {
        Content content = new Content();
        for (Wire wire : Wire.values()) {
            MediaType type = new MediaType().schema(schema);
            if (wire == Wire.JSON && !examples.isEmpty()) {
                type.setExamples(examples);
            }
            content.addMediaType(wire.mediaType().toString(), type);
        }
        return content;
    }

    private static Content pictured(HandlerMethod method, Content content) {
        Answers answers = method.getMethodAnnotation(Answers.class);
        if (answers != null && answers.pictured()) {
            Schema<Object> text = new JsonSchema();
            text.typesItem("string");
            content.addMediaType(
                    CookPicture.SVG.toString(), new MediaType().schema(text.description("The same as a picture.")));
        }
        if (answers != null && !answers.rows().isEmpty()) {
            Schema<Object> text = new JsonSchema();
            text.typesItem("string");
            content.addMediaType(LogTable.MEDIA_TYPE, new MediaType().schema(text.description(answers.rows())));
        }
        return content;
    }

    private static Map<String, Example> examples(Map<String, byte[]> bodies) {
        Map<String, Example> examples = new TreeMap<>();
        bodies.forEach((name, body) ->
                examples.put(name, new Example().value(JsonMapper.shared().readValue(body, Map.class))));
        return examples;
    }

    /** What explains a problem is open: whoever is not known has to find out what that means. */
    private static boolean isOpen(HandlerMethod method) {
        RequestMapping mapping = AnnotatedElementUtils.findMergedAnnotation(method.getMethod(), RequestMapping.class);
        return mapping != null && Arrays.stream(mapping.path()).allMatch(path -> path.startsWith("/problems/"));
    }

    /** The problems of an operation by status, in the order of the catalogue. */
    private static Map<String, List<ProblemCode>> problemsOf(
            Operation operation, boolean computes, boolean queried, boolean guarded) {
        boolean named = parameters(operation).stream().anyMatch(parameter -> "path".equals(parameter.getIn()));
        Map<String, List<ProblemCode>> byStatus = new LinkedHashMap<>();
        for (ProblemCode code : ProblemCode.values()) {
            boolean applies = switch (code.status()) {
                case 400 ->
                    computes
                            || code == ProblemCode.BAD_REQUEST
                            || code == ProblemCode.UNKNOWN_PARAMETER
                            || code == ProblemCode.UNKNOWN_WORD
                            || (queried && OF_QUERIES.contains(code));
                case 404 -> named;
                case 413, 415 -> computes;
                case 422 -> computes || (queried && OF_QUERIES.contains(code));
                case 401, 403, 429 -> guarded;
                case 406, 500, 503 -> true;
                default -> false;
            };
            if (applies) {
                byStatus.computeIfAbsent(Integer.toString(code.status()), status -> new ArrayList<>())
                        .add(code);
            }
        }
        return byStatus;
    }

    private ApiResponse problem(List<ProblemCode> codes) {
        MediaType type = new MediaType().schema(problem);
        codes.forEach(code -> type.addExamples(
                code.name(),
                new Example().value(JsonMapper.shared().readValue(Wire.JSON.write(example(code)), Map.class))));
        int status = codes.get(0).status();
        ApiResponse response =
                new ApiResponse().description(why(status)).content(new Content().addMediaType(PROBLEM, type));
        List<ContractHeader> headers = new ArrayList<>(ContractHeader.OF_PROBLEMS);
        switch (status) {
            case 401, 403 -> headers.add(ContractHeader.CHALLENGE);
            case 406 -> headers.add(ContractHeader.TYPES);
            case 415 -> headers.add(ContractHeader.READ_TYPES);
            case 500 -> headers.add(ContractHeader.INCIDENT);
            case 429, 503 -> headers.add(ContractHeader.RETRY_AFTER);
            default -> {}
        }
        if (status == 422) {
            headers.addAll(ContractHeader.OF_DEPRECATED);
        }
        headers.forEach(header -> response.addHeaderObject(header.field(), header.reference()));
        return response;
    }

    /** What a status means here, and who can mend it. */
    private static String why(int status) {
        return switch (status) {
            case 400 -> "The message does not keep this contract: the program that wrote it has to change.";
            case 401 -> "No key and no token that is good here was shown. Never where the service is open.";
            case 403 -> "The token is good, but does not allow this. Only where the service takes tokens.";
            case 404 -> "The catalogue has no such entry.";
            case 406 -> "Nothing that `Accept` asks for is answered with.";
            case 413 -> "The body is longer than is read.";
            case 415 -> "The body is of a type, a charset or a coding that is not read.";
            case 422 ->
                "The message keeps this contract, but what it asks cannot be answered: the question has to change.";
            case 429 -> "The client asks more than it may. The same request may succeed later.";
            case 500 -> "The service is at fault. The same request will fail again.";
            case 503 -> "There is more to do than can be done. The same request may succeed later.";
            default -> throw new IllegalArgumentException("no operation answers " + status);
        };
    }

    private Problem example(ProblemCode code) {
        return switch (code) {
            case OUT_OF_RANGE ->
                of(Fault.of("#/geometry/thicknessMm", code, "FAULT_OUT_OF_RANGE", "thicknessMm", "2", "3", "250 mm")
                        .value("2")
                        .range(3.0, 250.0, "mm")
                        .hint("HINT_CENTIMETRES"));
            case UNKNOWN_FIELD ->
                of(Fault.of("#/geometry/thickness", code, "FAULT_UNKNOWN_FIELD", "thickness")
                        .allowed(List.of("shape", "thicknessMm", "widthMm", "lengthMm", "diameterMm", "massG"))
                        .hint("HINT_MAYBE", "thicknessMm"));
            case BAD_REQUEST,
                    UNAUTHENTICATED,
                    FORBIDDEN,
                    NOT_FOUND,
                    NOT_ACCEPTABLE,
                    TOO_MANY_REQUESTS,
                    INTERNAL_ERROR,
                    OVERLOADED,
                    OUT_OF_TIME,
                    ISSUER_UNREACHABLE -> Problem.of(code, sentences);
            case UNKNOWN_PARAMETER ->
                of(Fault.of("?inclde", code, "FAULT_UNKNOWN_PARAMETER", "inclde")
                        .hint("HINT_MAYBE", "include"));
            default -> of(Fault.of(Pointer.BODY, code, "PROBLEM_" + code.name() + "_CAUSE"));
        };
    }

    private Problem of(Fault fault) {
        return Problem.of(fault.code(), List.of(FaultEntry.of(fault, sentences)), 1, sentences);
    }
}
