//! One file with its mutants planted as switches.
//!
//! Method: the syntax tree is walked; each place that may be changed becomes an expression that asks `crate::mutant::on` which way
//! to go. Operands stand in a `match`, so that they are written and worked out once and what they borrow lives as long as before.
//! Left alone: tests, constants, `const fn`, patterns, attributes, what stands in macros, conditions with `let`, and what is
//! multiplied by 0.0, which only hands on that a value is not known.

use crate::results::results;
use proc_macro2::Span;
use std::collections::BTreeSet;
use syn::spanned::Spanned;
use syn::visit_mut::{self, VisitMut};
use syn::{BinOp, Expr, Lit, UnOp, parse_quote};

/// One small change.
#[derive(Debug, Clone)]
pub struct Mutant {
    pub id: u32,
    pub file: String,
    pub line: usize,
    pub column: usize,
    /// What becomes what.
    pub change: String,
    /// Whether it stands in the planted tree; not where it does not compile.
    pub planted: bool,
}

/// Walks one file.
pub struct Planter<'p> {
    pub file: String,
    pub mutants: &'p mut Vec<Mutant>,
    /// Those that do not compile.
    pub left_out: &'p BTreeSet<u32>,
    /// Only bodies of closures count: a constant around them.
    outside: bool,
    /// Literals are places in a list.
    index: bool,
}

impl<'p> Planter<'p> {
    pub fn new(file: &str, mutants: &'p mut Vec<Mutant>, left_out: &'p BTreeSet<u32>) -> Planter<'p> {
        Planter { file: file.into(), mutants, left_out, outside: true, index: false }
    }

    /// The number of a new mutant; nothing where it is left out.
    fn add(&mut self, span: Span, change: String) -> Option<u32> {
        let id = self.mutants.last().map_or(1, |last| last.id + 1);
        let planted = !self.left_out.contains(&id);
        let (line, column) = (span.start().line, span.start().column + 1);
        self.mutants.push(Mutant { id, file: self.file.clone(), line, column, change, planted });
        planted.then_some(id)
    }

    /// `usual`, or one of the others where its mutant is on.
    fn choose(usual: Expr, others: Vec<(u32, Expr)>) -> Expr {
        others
            .into_iter()
            .rev()
            .fold(usual, |usual, (id, other)| parse_quote!(if crate::mutant::on(#id) { #other } else { #usual }))
    }

    fn binary(&mut self, expr: &mut Expr) {
        let Expr::Binary(binary) = expr else { return };
        let (left, right, op) = (&binary.left, &binary.right, binary.op);
        let span = op.span();
        let mut others = Vec::new();
        let mut plan = |from: &str, to: &str| {
            let op: BinOp = syn::parse_str(to).expect("an operator");
            if let Some(id) = self.add(span, format!("{from} -> {to}")) {
                others.push((id, op));
            }
        };
        match op {
            BinOp::Add(_) => plan("+", "-"),
            BinOp::Sub(_) => plan("-", "+"),
            BinOp::Mul(_) => plan("*", "/"),
            BinOp::Div(_) => plan("/", "*"),
            BinOp::Rem(_) => plan("%", "/"),
            BinOp::Lt(_) => [("<", "<="), ("<", ">=")].into_iter().for_each(|(from, to)| plan(from, to)),
            BinOp::Le(_) => [("<=", "<"), ("<=", ">")].into_iter().for_each(|(from, to)| plan(from, to)),
            BinOp::Gt(_) => [(">", ">="), (">", "<=")].into_iter().for_each(|(from, to)| plan(from, to)),
            BinOp::Ge(_) => [(">=", ">"), (">=", "<")].into_iter().for_each(|(from, to)| plan(from, to)),
            BinOp::Eq(_) => plan("==", "!="),
            BinOp::Ne(_) => plan("!=", "=="),
            BinOp::And(_) => plan("&&", "||"),
            BinOp::Or(_) => plan("||", "&&"),
            BinOp::AddAssign(_) => plan("+=", "-="),
            BinOp::SubAssign(_) => plan("-=", "+="),
            BinOp::MulAssign(_) => plan("*=", "/="),
            BinOp::DivAssign(_) => plan("/=", "*="),
            _ => {}
        }
        if others.is_empty() {
            return;
        }
        *expr = match op {
            BinOp::And(_) => {
                let id = others[0].0;
                parse_quote!((match #left { __l => if __l != crate::mutant::on(#id) { #right } else { __l } }))
            }
            BinOp::Or(_) => {
                let id = others[0].0;
                parse_quote!((match #left { __l => if __l == crate::mutant::on(#id) { #right } else { __l } }))
            }
            BinOp::AddAssign(_) | BinOp::SubAssign(_) | BinOp::MulAssign(_) | BinOp::DivAssign(_) => {
                let others = others.into_iter().map(|(id, op)| (id, parse_quote!(#left #op __r))).collect();
                let chosen = Self::choose(parse_quote!(#left #op __r), others);
                parse_quote!((match #right { __r => { #chosen } }))
            }
            BinOp::Add(_) | BinOp::Sub(_) | BinOp::Mul(_) | BinOp::Div(_) | BinOp::Rem(_) => {
                let others = others.into_iter().map(|(id, op)| (id, parse_quote!(__l #op __r))).collect();
                let chosen = Self::choose(parse_quote!(__l #op __r), others);
                parse_quote!((match (#left, #right) { (__l, __r) => #chosen }))
            }
            _ => {
                let others = others.into_iter().map(|(id, op)| (id, parse_quote!(*__l #op *__r))).collect();
                let chosen = Self::choose(parse_quote!(*__l #op *__r), others);
                parse_quote!((match (&(#left), &(#right)) { (__l, __r) => #chosen }))
            }
        };
    }

    fn unary(&mut self, expr: &mut Expr) {
        let Expr::Unary(unary) = expr else { return };
        let (op, operand) = (unary.op, &unary.expr);
        let name = match op {
            UnOp::Not(_) => "! dropped",
            UnOp::Neg(_) => "- dropped",
            _ => return,
        };
        if let Some(id) = self.add(op.span(), name.into()) {
            *expr = parse_quote!((match #operand { __v => if crate::mutant::on(#id) { __v } else { #op __v } }));
        }
    }

    fn method(&mut self, expr: &mut Expr) {
        let Expr::MethodCall(call) = expr else { return };
        let name = call.method.to_string();
        let other = match (name.as_str(), call.args.len()) {
            ("min", 0 | 1) => "max",
            ("max", 0 | 1) => "min",
            ("sin", 0) => "cos",
            ("cos", 0) => "sin",
            ("floor", 0) => "ceil",
            ("ceil", 0) => "floor",
            ("any", 1) => "all",
            ("all", 1) => "any",
            _ => return,
        };
        let Some(id) = self.add(call.method.span(), format!("{name} -> {other}")) else { return };
        let (receiver, method) = (&call.receiver, &call.method);
        let other = syn::Ident::new(other, method.span());
        let moved = matches!(name.as_str(), "any" | "all");
        *expr = match call.args.first() {
            // a closure is typed by its place, so it is written twice
            Some(first) if moved => parse_quote!((if crate::mutant::on(#id) {
                #receiver.#other(#first)
            } else {
                #receiver.#method(#first)
            })),
            Some(first) => parse_quote!((match (#receiver, #first) { (__l, __r) => {
                if crate::mutant::on(#id) { __l.#other(__r) } else { __l.#method(__r) } } })),
            None => parse_quote!((match #receiver { __l => {
                if crate::mutant::on(#id) { __l.#other() } else { __l.#method() } } })),
        };
    }

    fn literal(&mut self, expr: &mut Expr) {
        let Expr::Lit(literal) = expr else { return };
        let (from, to) = match &literal.lit {
            Lit::Float(float) => {
                let Ok(value) = float.base10_parse::<f64>() else { return };
                let changed = if value == 0.0 { 1.0 } else { 2.0 * value };
                (float.to_string(), format!("{changed:?}{}", float.suffix()))
            }
            Lit::Int(int) if !self.index => {
                let Ok(value) = int.base10_parse::<u64>() else { return };
                let Some(changed) = value.checked_add(1) else { return };
                (int.to_string(), format!("{changed}{}", int.suffix()))
            }
            _ => return,
        };
        if let Some(id) = self.add(literal.span(), format!("{from} -> {to}")) {
            let other: Expr = syn::parse_str(&to).expect("a literal");
            let usual: Expr = syn::parse_str(&from).expect("a literal");
            *expr = parse_quote!((if crate::mutant::on(#id) { #other } else { #usual }));
        }
    }

    /// Results in place of what a body works out.
    fn answers(&mut self, output: &syn::Type, span: Span, block: &mut syn::Block) {
        for (words, result) in results(output).into_iter().rev() {
            if let Some(id) = self.add(span, format!("result -> {words}")) {
                block.stmts.insert(0, parse_quote!(if crate::mutant::on(#id) { return #result; }));
            }
        }
    }

    fn body(&mut self, sig: &syn::Signature, attrs: &[syn::Attribute], block: &mut syn::Block) {
        if sig.constness.is_some() || attrs.iter().any(is_test) {
            return;
        }
        let before = (std::mem::replace(&mut self.outside, false), std::mem::replace(&mut self.index, false));
        self.visit_block_mut(block);
        if let syn::ReturnType::Type(_, output) = &sig.output {
            self.answers(output, sig.ident.span(), block);
        }
        (self.outside, self.index) = before;
    }
}

/// Whether what carries this is for tests alone.
pub fn is_test(attr: &syn::Attribute) -> bool {
    attr.path().is_ident("test")
        || attr.path().is_ident("cfg") && attr.parse_args::<syn::Ident>().is_ok_and(|argument| argument == "test")
}

/// Whether this is `0.0 * …`, which hands on that a value is not known and adds nothing else.
fn hands_on(expr: &Expr) -> bool {
    match expr {
        Expr::Paren(inner) => hands_on(&inner.expr),
        Expr::Binary(binary) => {
            let zero = |side: &Expr| {
                matches!(side, Expr::Lit(syn::ExprLit { lit: Lit::Float(f), .. })
                if f.base10_parse::<f64>().is_ok_and(|value| value == 0.0))
            };
            matches!(binary.op, BinOp::Mul(_)) && (zero(&binary.left) || zero(&binary.right))
        }
        _ => false,
    }
}

/// Whether a `let` stands in this condition.
fn with_let(expr: &Expr) -> bool {
    match expr {
        Expr::Let(_) => true,
        Expr::Binary(binary) if matches!(binary.op, BinOp::And(_)) => with_let(&binary.left) || with_let(&binary.right),
        _ => false,
    }
}

impl VisitMut for Planter<'_> {
    fn visit_pat_mut(&mut self, _: &mut syn::Pat) {}
    fn visit_type_mut(&mut self, _: &mut syn::Type) {}
    fn visit_attribute_mut(&mut self, _: &mut syn::Attribute) {}
    fn visit_generic_argument_mut(&mut self, _: &mut syn::GenericArgument) {}
    fn visit_expr_const_mut(&mut self, _: &mut syn::ExprConst) {}

    fn visit_item_mod_mut(&mut self, module: &mut syn::ItemMod) {
        if !module.attrs.iter().any(is_test) {
            visit_mut::visit_item_mod_mut(self, module);
        }
    }
    fn visit_item_const_mut(&mut self, item: &mut syn::ItemConst) {
        let before = std::mem::replace(&mut self.outside, true);
        self.visit_expr_mut(&mut item.expr);
        self.outside = before;
    }
    fn visit_item_static_mut(&mut self, item: &mut syn::ItemStatic) {
        let before = std::mem::replace(&mut self.outside, true);
        self.visit_expr_mut(&mut item.expr);
        self.outside = before;
    }
    fn visit_item_fn_mut(&mut self, item: &mut syn::ItemFn) {
        let syn::ItemFn { sig, attrs, block, .. } = item;
        self.body(sig, attrs, block);
    }
    fn visit_impl_item_fn_mut(&mut self, item: &mut syn::ImplItemFn) {
        let syn::ImplItemFn { sig, attrs, block, .. } = item;
        self.body(sig, attrs, block);
    }
    fn visit_trait_item_fn_mut(&mut self, item: &mut syn::TraitItemFn) {
        let syn::TraitItemFn { sig, attrs, default, .. } = item;
        if let Some(block) = default {
            self.body(sig, attrs, block);
        }
    }
    fn visit_expr_repeat_mut(&mut self, repeat: &mut syn::ExprRepeat) {
        self.visit_expr_mut(&mut repeat.expr);
    }
    fn visit_expr_index_mut(&mut self, index: &mut syn::ExprIndex) {
        self.visit_expr_mut(&mut index.expr);
        let before = std::mem::replace(&mut self.index, true);
        self.visit_expr_mut(&mut index.index);
        self.index = before;
    }
    fn visit_expr_closure_mut(&mut self, closure: &mut syn::ExprClosure) {
        let formula = std::mem::replace(&mut self.outside, false);
        self.visit_expr_mut(&mut closure.body);
        self.outside = formula;
        if formula {
            // the function of a formula
            let body = &closure.body;
            let mut others: Vec<(u32, Expr)> = Vec::new();
            for value in ["0.0", "1.0"] {
                if let Some(id) = self.add(body.span(), format!("result -> {value}")) {
                    let value: Expr = syn::parse_str(value).expect("a number");
                    others.push((id, parse_quote!(crate::units::Measure::of_si(#value))));
                }
            }
            if !others.is_empty() {
                let chosen = Self::choose(parse_quote!(#body), others);
                closure.body = parse_quote!((#chosen));
            }
        }
    }
    fn visit_expr_if_mut(&mut self, expr: &mut syn::ExprIf) {
        let called = matches!(*expr.cond, Expr::MethodCall(_) | Expr::Call(_) | Expr::Path(_) | Expr::Field(_));
        let span = expr.cond.span();
        visit_mut::visit_expr_if_mut(self, expr);
        if called
            && !self.outside
            && let Some(id) = self.add(span, "condition turned round".into())
        {
            let cond = &expr.cond;
            expr.cond = parse_quote!((match #cond { __v => __v != crate::mutant::on(#id) }));
        }
    }

    fn visit_expr_mut(&mut self, expr: &mut Expr) {
        if self.outside {
            return visit_mut::visit_expr_mut(self, expr);
        }
        match expr {
            Expr::Binary(_) if hands_on(expr) => {
                let Expr::Binary(binary) = expr else { return };
                self.literal(&mut binary.left);
                self.literal(&mut binary.right);
            }
            Expr::Binary(binary) if matches!(binary.op, BinOp::Add(_) | BinOp::Sub(_)) && hands_on(&binary.right) => {
                visit_mut::visit_expr_mut(self, expr);
            }
            Expr::Binary(_) if with_let(expr) => visit_mut::visit_expr_mut(self, expr),
            Expr::Binary(_) => {
                visit_mut::visit_expr_mut(self, expr);
                self.binary(expr);
            }
            Expr::Unary(_) => {
                visit_mut::visit_expr_mut(self, expr);
                self.unary(expr);
            }
            Expr::MethodCall(_) => {
                visit_mut::visit_expr_mut(self, expr);
                self.method(expr);
            }
            Expr::Lit(_) => self.literal(expr),
            _ => visit_mut::visit_expr_mut(self, expr),
        }
    }
}
