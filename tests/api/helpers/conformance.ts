/** Judges responses by the OpenAPI document with ajv, which shares no code with zod. */
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import type { OpenAPIObject, ReferenceObject, ResponseObject } from "openapi3-ts/oas31";

export interface Judge {
  /** Whether a value is valid by a named schema of the document. */
  accepts(component: string, value: unknown): boolean;
  /** What is wrong with a response by the document; empty when nothing is. */
  responseFaults(method: "get" | "post", path: string, response: Response): Promise<string[]>;
}

export function judgeBy(document: OpenAPIObject): Judge {
  const ajv = new Ajv2020({ strict: false });
  ajv.addSchema(document, "document");
  const compiled = new Map<string, ValidateFunction>();
  const validator = (ref: string): ValidateFunction => {
    const known = compiled.get(ref) ?? ajv.compile({ $ref: `document${ref}` });
    compiled.set(ref, known);
    return known;
  };
  const accepts = (component: string, value: unknown) => validator(`#/components/schemas/${component}`)(value);

  return {
    accepts: (component, value) => accepts(component, value) === true,
    async responseFaults(method, path, response) {
      const responses = document.paths?.[path]?.[method]?.responses;
      const listed: ResponseObject | ReferenceObject | undefined = responses?.[String(response.status)];
      if (!listed) return [`status ${response.status} of ${method} ${path} is not in the document`];
      const found =
        "$ref" in listed ? document.components?.responses?.[String(listed.$ref).replace(/.*\//, "")] : listed;
      const type = (response.headers.get("Content-Type") ?? "").split(";")[0] as string;
      const media = (found as ResponseObject | undefined)?.content?.[type];
      if (!media) return [`type ${type} with status ${response.status} of ${path} is not in the document`];
      if (!type.endsWith("json")) return [];
      const ref = (media.schema as ReferenceObject).$ref;
      const validate = validator(ref);
      return validate(await response.json()) ? [] : [`${ref}: ${ajv.errorsText(validate.errors)}`];
    },
  };
}
